package cistern.clinic.web;

import static cistern.clinic.web.Html.button;
import static cistern.clinic.web.Html.field;
import static cistern.clinic.web.Html.input;

import cistern.report.markup.Element;
import cistern.report.markup.Node;
import java.util.Optional;

/** The two forms by which somebody signs in; both carry what the visitor was about to do. */
public final class SignInForms {

  private SignInForms() {}

  /**
   * With name and password.
   *
   * @param kept what was sent when the session had ended, if anything was
   */
  public static Element password(PageRequest visit, Optional<KeptForm> kept) {
    return visit
        .form("/sign-in")
        .with(
            carried(visit, kept),
            field("Name", input("name", "").with("autocomplete", "username")),
            field(
                "Password",
                input("password", "")
                    .with("type", "password")
                    .with("autocomplete", "current-password")),
            button("Sign in"));
  }

  /** With a one-time code. */
  public static Element code(PageRequest visit, Optional<KeptForm> kept) {
    return visit
        .form("/code")
        .with("class", "second")
        .with(
            Element.of("h2", "With a one-time code"),
            carried(visit, kept),
            field("One-time code", input("code", visit.field("code")).with("autocomplete", "off")),
            button("Come in"));
  }

  private static Node carried(PageRequest visit, Optional<KeptForm> kept) {
    return kept.map(KeptForm::toCarried).orElseGet(() -> Html.hidden("next", visit.field("next")));
  }
}
