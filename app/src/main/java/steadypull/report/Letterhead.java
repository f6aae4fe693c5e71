package steadypull.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * Whose form it is and for whom. Immutable; texts may be empty.
 *
 * @param workshop its name
 * @param lines under the name, such as address and telephone
 * @param logo picture beside it; empty: none
 * @param customer for whom
 * @param made on which day, and by which release of the program, as they are to be printed
 */
public record Letterhead(
    String workshop, List<String> lines, Optional<Logo> logo, String customer, Made made) {
  public Letterhead {
    Objects.requireNonNull(workshop);
    lines = List.copyOf(lines);
    Objects.requireNonNull(logo);
    Objects.requireNonNull(customer);
    Objects.requireNonNull(made);
  }

  /**
   * When and with what a form was made.
   *
   * @param day as it is to be printed
   * @param version of the program
   */
  public record Made(String day, String version) {
    /** A day in the reader's language. */
    public static Made on(LocalDate day, String version, Locale locale) {
      return new Made(DayText.of(Optional.of(day), new ReportWords(locale)), version);
    }
  }

  /** The same for somebody. */
  public Letterhead forCustomer(String other) {
    return new Letterhead(workshop, lines, logo, other, made);
  }

  /** The same of another workshop. */
  public Letterhead ofWorkshop(String other) {
    return new Letterhead(other, lines, logo, customer, made);
  }

  /** The same with another picture. */
  public Letterhead withLogo(Logo other) {
    return new Letterhead(workshop, lines, Optional.of(other), customer, made);
  }
}
