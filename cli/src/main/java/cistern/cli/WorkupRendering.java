package cistern.cli;

import cistern.exchange.json.JsonText;
import java.nio.charset.StandardCharsets;

/** The work-up itself, with every digit and everything that was not understood. */
final class WorkupRendering implements Rendering {

  @Override
  public String extension() {
    return "json";
  }

  @Override
  public boolean isStackable() {
    return true;
  }

  @Override
  public boolean isListed() {
    return true;
  }

  @Override
  public byte[] toBytes(Result result) {
    return JsonText.of(result.document()).getBytes(StandardCharsets.UTF_8);
  }
}
