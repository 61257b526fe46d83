package cistern.clinic.web;

import cistern.clinic.setting.Setting;

/** An address inside this program, such as a form may carry: names between slashes. */
public final class LocalPath {

  private LocalPath() {}

  /** Whether a text is one; it is looked at sign by sign, so that no length costs a stack. */
  public static boolean isOne(String text) {
    return text.length() <= Setting.ADDRESS_MOST.number()
        && text.startsWith("/")
        && !text.endsWith("/")
        && !text.contains("//")
        && text.chars().allMatch(LocalPath::isSign);
  }

  private static boolean isSign(int sign) {
    return sign == '/'
        || sign == '-'
        || (sign >= '0' && sign <= '9')
        || (sign >= 'A' && sign <= 'Z')
        || (sign >= 'a' && sign <= 'z');
  }
}
