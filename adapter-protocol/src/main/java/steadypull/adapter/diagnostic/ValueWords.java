package steadypull.adapter.diagnostic;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What the numbers of counted values mean in words, for people. Stateless.
 *
 * <p>Rows: signal keys | number = words; ... Sources: parameter 51 SAE J1979 appendix B as the
 * cases of SAE J1699-3 and an open signal table give it (0F to 17 from memory); 65, 70, 71 and 8B
 * as makers' tables and those cases give them.
 */
public final class ValueWords {
  private static final String ROWS =
      """
      01.51 | 0 = none; 1 = gasoline; 2 = methanol; 3 = ethanol; 4 = diesel; 5 = liquefied petroleum gas; 6 = compressed natural gas; 7 = propane; 8 = electric; 9 = bi-fuel running gasoline; 10 = bi-fuel running methanol; 11 = bi-fuel running ethanol; 12 = bi-fuel running liquefied petroleum gas; 13 = bi-fuel running compressed natural gas; 14 = bi-fuel running propane; 15 = bi-fuel running electric; 16 = bi-fuel electric and combustion; 17 = hybrid gasoline; 18 = hybrid ethanol; 19 = hybrid diesel; 20 = hybrid electric; 21 = hybrid electric and combustion; 22 = hybrid regenerating; 23 = bi-fuel running diesel hybrid; 24 = bi-fuel natural gas; 25 = bi-fuel diesel; 26 = natural gas; 27 = dual fuel diesel and compressed natural gas; 28 = dual fuel diesel and liquefied natural gas
      01.65.1 01.65.4 01.8B.1 01.8B.3 01.8B.4 | 0 = off; 1 = on
      01.65.2 | 0 = neutral or park; 1 = drive or reverse
      01.65.3 | 0 = out of gear; 1 = in gear
      01.70.3 01.70.6 01.71.3 01.71.6 | 1 = open loop; 2 = closed loop; 3 = fault, not reliable
      01.8B.2 | 0 = passive; 1 = active
      """;

  private static final Pattern BETWEEN_MEANINGS = Pattern.compile("\\s*;\\s*");
  private static final Map<String, Map<Integer, String>> WORDS =
      ROWS.lines()
          .map(row -> row.split("\\|", -1))
          .flatMap(
              cells -> {
                Map<Integer, String> meanings = meanings(cells[1]);
                return Pattern.compile(" ")
                    .splitAsStream(cells[0].strip())
                    .map(key -> Map.entry(key, meanings));
              })
          .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, Map.Entry::getValue));

  private ValueWords() {}

  private static Map<Integer, String> meanings(String cell) {
    return BETWEEN_MEANINGS
        .splitAsStream(cell.strip())
        .map(meaning -> meaning.split(" = ", 2))
        .collect(Collectors.toMap(pair -> Integer.valueOf(pair[0]), pair -> pair[1]));
  }

  /** The meaning of a value; empty where the number is a quantity or the standard keeps it free. */
  public static Optional<String> of(SignalValue value) {
    return Optional.ofNullable(WORDS.get(value.signal().key()))
        .flatMap(meanings -> Optional.ofNullable(meanings.get((int) Math.rint(value.value()))));
  }
}
