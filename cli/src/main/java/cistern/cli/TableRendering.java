package cistern.cli;

import cistern.exchange.table.TableWriter;
import java.nio.charset.StandardCharsets;

/** A row of a table. */
final class TableRendering implements Rendering {

  private final TableWriter table;

  TableRendering(boolean hasFindings) {
    this.table = TableWriter.of(hasFindings);
  }

  @Override
  public String extension() {
    return "csv";
  }

  @Override
  public boolean isStackable() {
    return true;
  }

  @Override
  public String separator() {
    return "";
  }

  @Override
  public String heading() {
    return table.heading();
  }

  @Override
  public byte[] toBytes(Result result) {
    return table.row(result.interpretation()).getBytes(StandardCharsets.UTF_8);
  }
}
