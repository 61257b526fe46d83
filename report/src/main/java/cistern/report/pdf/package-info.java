/**
 * Pages as archival and accessible PDF (PDF/A-3u and PDF/UA-1) with files attached. The only
 * package that may use the PDF libraries; loaded only when a PDF is asked for. Uses pages.
 */
@NullMarked
package cistern.report.pdf;

import org.jspecify.annotations.NullMarked;
