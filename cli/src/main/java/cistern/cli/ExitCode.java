package cistern.cli;

/** How a command ends; the numbers are fixed from outside. */
enum ExitCode {
  DONE(0),
  WRONG_COMMAND_LINE(2),
  INVALID_INPUT(3),
  NOT_WRITTEN(4),
  FAULT(70);

  private final int number;

  ExitCode(int number) {
    this.number = number;
  }

  int number() {
    return number;
  }
}
