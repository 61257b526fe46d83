/**
 * A document for people, built once and set as text, for a screen and for print: sections of
 * sentences, lists, tables, results, forms and figures, each with what it rests on. Knows nothing
 * of what it is about.
 *
 * <p>How to add a section: write a method that returns a {@link cistern.report.paper.Paper.Section}
 * of blocks ({@code Paragraphs}, {@code Items}, {@code Table}, {@code Results}, {@code Form},
 * {@code Picture}), each line with the grounds that it rests on, and add it where the paper is
 * composed ({@code ClinicianPaper}, {@code LetterPaper}, {@code PlanPaper}, {@code
 * ComparisonPaper}). {@code Section.annex} puts it after the first pages in print and folds it on a
 * screen. Nothing else is to do: text, HTML, PDF and the clinic's screen are made from it. A
 * sentence never holds a row number, a rule's name, a key or a status; those stay in JSON and
 * behind the source.
 */
@NullMarked
package cistern.report.paper;

import org.jspecify.annotations.NullMarked;
