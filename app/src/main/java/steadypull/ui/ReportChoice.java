package steadypull.ui;

import java.nio.file.Path;
import java.util.Optional;

/** Asks a person where to write a form. FX thread only. */
interface ReportChoice {
  /**
   * Asks, and waits for the answer.
   *
   * @param name proposed, without its ending
   * @return a file whose name ends in {@code .pdf} or {@code .html}; empty if they thought better
   *     of it
   */
  Optional<Path> forReport(String name);
}
