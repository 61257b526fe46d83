/**
 * Who is at the door of the web application: sign-in, headers, what each role may open, and the
 * frame of a page. Uses accounts and the markup of reports.
 */
@NullMarked
package cistern.clinic.web;

import org.jspecify.annotations.NullMarked;
