package cistern.cli;

import cistern.exchange.json.JsonText;
import java.io.IOException;
import java.io.OutputStream;
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
  public void write(Result result, OutputStream out) throws IOException {
    out.write(JsonText.of(result.document()).getBytes(StandardCharsets.UTF_8));
  }
}
