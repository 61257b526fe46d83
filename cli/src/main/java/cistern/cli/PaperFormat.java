package cistern.cli;

/** How a plan or a comparison is written. */
enum PaperFormat {
  TEXT,
  JSON,
  HTML,
  PDF
}
