package steadypull.adapter.dialogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * Tells the kinds of reply apart. Works on lines without blanks in upper case, because adapters
 * differ in both. Where a reply holds several things, the one that makes the rest doubtful wins.
 */
final class ReplyText {
  /** Progress notes that may stand alone or be glued to the first line of data. */
  private static final Pattern PROGRESS =
      Pattern.compile("^(SEARCHING\\.*+|BUSINIT:?+\\.*+(OK)?+(?!ERROR))+");

  private static final Pattern SLEEP_WARNING = Pattern.compile("!?(ACT|LP)ALERT");
  private static final Pattern RESTART = Pattern.compile("LVRESET|ERR[0-9]{2}");
  private static final Pattern BUS_FAULT =
      Pattern.compile("(CAN|BUS|FB)ERROR|BUSBUSY|(BUSINIT:?\\.*)?ERROR");
  private static final Pattern DAMAGED = Pattern.compile(".*<(DATA|RX)ERROR|DATAERROR");

  /** Without headers the parts of a long answer are numbered: one digit and a colon. */
  private static final Pattern HEX = Pattern.compile("([0-9A-F]:)?[0-9A-F]+");

  /** A line of plain text with a word in it. */
  private static final Pattern NAME = Pattern.compile("[ -~]*[A-Za-z]{4}[ -~]*");

  private final String command;
  private final List<String> lines = new ArrayList<>();
  private final List<String> wording = new ArrayList<>();

  private ReplyText(String command, String heard) {
    this.command = bare(command);
    boolean echoMayCome = true;
    for (String line : (Iterable<String>) heard.lines()::iterator) {
      String bare = bare(line);
      if (echoMayCome && bare.equals(this.command)) {
        echoMayCome = false;
      } else {
        keep(PROGRESS.matcher(bare).replaceFirst(""), line.strip());
      }
    }
  }

  static Reply classify(String command, String heard) {
    return new ReplyText(command, heard).reply();
  }

  /**
   * What text tells that came while nothing was asked: a restart, or a name that an adapter prints
   * when it has started. A late answer, a warning or noise are of no consequence.
   */
  static Optional<Reply.Restarted> uninvited(String heard) {
    return switch (classify("", heard)) {
      case Reply.Restarted restarted -> Optional.of(restarted);
      case Reply.Unexpected(String text) when NAME.matcher(text).matches() ->
          Optional.of(new Reply.Restarted(text));
      case Reply.Unexpected noise -> Optional.empty();
      case Reply.Data late -> Optional.empty();
      case Reply.NoData late -> Optional.empty();
      case Reply.NotConnected late -> Optional.empty();
      case Reply.BusFault late -> Optional.empty();
      case Reply.Overflowed late -> Optional.empty();
      case Reply.Damaged late -> Optional.empty();
      case Reply.Stopped late -> Optional.empty();
      case Reply.Accepted late -> Optional.empty();
      case Reply.NotUnderstood late -> Optional.empty();
      case Reply.Text none -> Optional.empty();
      case Reply.Silence none -> Optional.empty();
    };
  }

  private void keep(String bare, String words) {
    if (!bare.isEmpty() && !SLEEP_WARNING.matcher(bare).matches()) {
      lines.add(bare);
      wording.add(words);
    }
  }

  private Reply reply() {
    if (has(RESTART.asMatchPredicate())) {
      return new Reply.Restarted(text());
    }
    if (has("STOPPED"::equals)) {
      return new Reply.Stopped();
    }
    if (has("BUFFERFULL"::equals)) {
      return new Reply.Overflowed();
    }
    return command.startsWith("AT") ? replyOfAdapter() : replyOfVehicle();
  }

  private Reply replyOfAdapter() {
    if (has("?"::equals)) {
      return new Reply.NotUnderstood();
    }
    if (has("OK"::equals)) {
      return new Reply.Accepted();
    }
    return lines.isEmpty() || has(line -> line.indexOf('\uFFFD') >= 0)
        ? new Reply.Unexpected(text())
        : new Reply.Text(text());
  }

  private Reply replyOfVehicle() {
    List<String> data = lines.stream().filter(HEX.asMatchPredicate()).toList();
    if (!data.isEmpty()) {
      return has(line -> !isDataOrKnown(line))
          ? new Reply.Unexpected(text())
          : new Reply.Data(data);
    }
    if (has("NODATA"::equals)) {
      return new Reply.NoData();
    }
    if (has("UNABLETOCONNECT"::equals)) {
      return new Reply.NotConnected();
    }
    if (has(BUS_FAULT.asMatchPredicate())) {
      return new Reply.BusFault(text());
    }
    if (has(DAMAGED.asMatchPredicate())) {
      return new Reply.Damaged();
    }
    return has("?"::equals) ? new Reply.NotUnderstood() : new Reply.Unexpected(text());
  }

  private static boolean isDataOrKnown(String line) {
    return HEX.matcher(line).matches()
        || DAMAGED.matcher(line).matches()
        || BUS_FAULT.matcher(line).matches()
        || line.equals("NODATA");
  }

  private boolean has(Predicate<String> kind) {
    return lines.stream().anyMatch(kind);
  }

  private String text() {
    return Dialogue.excerpt(String.join(" ", wording));
  }

  private static String bare(String line) {
    return line.replaceAll("\\s", "").toUpperCase(Locale.ROOT);
  }
}
