/**
 * Printed forms: what was found out, worded and drawn for people on paper. One page of HTML with
 * vector pictures in it is both the file for a browser and, printed, the PDF; it opens nothing from
 * outside. {@link steadypull.report.ReportFile} writes them; {@link
 * steadypull.report.ComparisonWords} has the sentences and figures that screen and terminal show
 * too. Any thread.
 */
@NullMarked
package steadypull.report;

import org.jspecify.annotations.NullMarked;
