package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can be mistyped, and the one clear message that each mistake gives. */
class MistakesTest {
  /** A command, what it should have been and what it was; under_scores stand for blanks. */
  private static final String WRONG =
      """
      tow                                        | a command (advise, backup | "tow"
      exprot                                     | Did you mean export      | "exprot"
      --bogus                                    | an option of this command | "--bogus"
      trips --jsn                                | Did you mean --json?      | "--jsn"
      trips --json=maybe                         | expected --json, found    | "maybe"
      trips --json --json                        | expected --json once      | more than once
      trips extra                                | no further argument       | "extra"
      trips --units furlongs                     | metric or imperial        | "furlongs"
      trips --language tlh                       | en or de                  | "tlh"
      trips --library ''                         | --library                 | blank
      export x                                   | expected --to FILE        | nothing in its place
      import                                     | expected FILE             | nothing in its place
      record --port demo:cool-day                | expected --vehicle NAME   | nothing in its place
      record --vehicle V --port                  | expected --port PORT      | nothing in its place
      record                                     | --port PORT and --vehicle NAME | nothing
      record --port x --vehicle ''               | expected a name           | blank
      record --port x --vehicle V --for 5        | 90s, 15m or 2h            | "5"
      record --port x --vehicle V --for 0s       | above nothing             | "0s"
      record --port x --vehicle V --pace slow    | polite or full            | "slow"
      vehicle V --limit engine-oil=90            | id=value                  | "engine-oil=90"
      vehicle V --layout steam                   | air-to-air or water-to-air | "steam"
      vehicle V --speed-range 90..60             | 20 to 130 km/h            | "90..60"
      vehicle V --cap 15psi                      | 0 to 3 bar                | "15psi"
      vehicle V --cap 4                          | 0 to 3 bar                | "4"
      trip x --delete                            | --yes beside --delete     | --delete alone
      import a b --start 2026-07-15T17:45:12Z    | one FILE beside --start   | 2 files
      import a b --propose-map                   | one FILE and no --map     | more
      advise x --forecasts 0                     | 1 or more                 | "0"
      advise x --forecasts soon                  | whole seconds             | "soon"
      advise x --route                           | expected --route R.gpx    | nothing in its place
      advise x --route ''                        | --route                   | blank
      advise x --no-memory=maybe                 | expected --no-memory      | "maybe"
      rehearse --rules                           | expected --rules FILE     | nothing in its place
      rehearse --jsn                             | Did you mean --json?      | "--jsn"
      scenarios --at pty                         | --serve NAME beside       | --at alone
      record --port tcp://x --vehicle V          | tcp://host:port           | another form
      record --port tcp://x:99999 --vehicle V    | a port from 1 to 65535    | another form
      record --port COM3?rate=5 --vehicle V      | such as baud=38400        | "rate=5"
      record --port capture: --vehicle V         | capture:FILE              | no file
      record --port demo:moon --vehicle V        | demo:SCENARIO             | no scenario named "moon"
      record --port demo:cool-day?warp=9 --vehicle V | known settings        | setting "warp"
      record --port pigeon://x --vehicle V       | tcp://host:port           | none of these
      record --port demo:cool-day --receiver tcp:x --vehicle V | tcp://host:port | another form
      record --port demo:cool-day --receiver x --vehicle V | demo-receiver:SCENARIO | none of these
      scenarios --serve cool-day --at tcp:abc    | pty or tcp:PORT           | "tcp:abc"
      scenarios --serve cool-day --at tcp:65536  | a port from 0 to 65535    | "tcp:65536"
      scenarios --serve moon --at tcp:0          | demo:SCENARIO             | no scenario named "moon"
      scenarios --serve cool-day?warp=9          | known settings            | setting "warp"
      --port tcp://x                             | tcp://host:port           | another form
      --port pigeon://x                          | tcp://host:port           | none of these
      --receiver tcp:x --port demo:cool-day      | tcp://host:port           | another form
      climbs                                     | expected TRIP             | nothing in its place
      backup                                     | --to FILE                 | nothing in its place
      restore                                    | expected FILE             | nothing in its place
      check extra                                | no further argument       | "extra"
      forget                                     | expected                  | found
      forget --around 1,2                        | expected                  | "1,2"
      forget --list --roads                      | expected                  | found
      ports --probe tcp://x --what               | an option of this command | "--what"
      road-load                                  | --speed KM H              | nothing in its place
      """;

  @TempDir private Path folder;
  private Desk desk;

  @BeforeEach
  void twoTripsOfOneName() throws Exception {
    desk = new Desk(folder.resolve("library"));
    Path table = Files.writeString(folder.resolve("a.csv"), "time[s],vehicle_speed[km/h]\n0,80\n");
    // Ids begin with the start of a trip, which is the time of its table's file.
    Files.setLastModifiedTime(table, FileTime.from(Desk.NOW));
    Files.writeString(folder.resolve("bad.json"), "{\"mass\": 3500}");
    Files.writeString(folder.resolve("bad.toml"), "[[rule]]\nid = 5\n");
    String file = table.toString();
    assertThat(desk.type("import", file, file, "--again").status()).isZero();
  }

  /** Arguments are parted by blanks; FOLDER stands for the test's folder. */
  private Desk.Answer type(String command) {
    return desk.type(arguments(command));
  }

  private String[] arguments(String command) {
    return Arrays.stream(command.split(" "))
        .map(each -> each.replace("FOLDER", folder.toString()).replace('_', ' '))
        .map(each -> each.equals("''") ? "" : each)
        .toArray(String[]::new);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = WRONG)
  void wrongUsageIsToldInFourPartsWithAWayToTheHelp(String command, String expected, String found) {
    Desk.Answer answer = type(command);

    assertThat(answer.status()).as(command).isEqualTo(2);
    assertThat(answer.out()).isEmpty();
    List<String> lines = answer.err().lines().toList();
    assertThat(lines).as(command).hasSize(2);
    // What was tried, what was expected, what was found, what to do.
    assertThat(lines.getFirst()).matches("Could not .+: expected .+, found .+\\. \\S.+\\.");
    assertThat(lines.getFirst().replace('_', ' ')).contains(expected).contains(found);
    assertThat(lines.getLast()).matches("\"steadypull.* --help\" shows the usage\\.");
  }

  /** Where nobody has a library yet, a wish that is refused leaves none behind. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = WRONG)
  void wrongUsageMakesNothing(String command) throws Exception {
    Path home = Files.createDirectory(folder.resolve("home"));
    Desk.Answer answer = new Desk(home.resolve("library")).type(arguments(command));

    assertThat(answer.status()).as(command).isEqualTo(2);
    assertThat(home).isEmptyDirectory();
  }

  @Test
  void anAddressThatCannotBeProbedIsWrongUsageToo() {
    Desk.Answer answer = desk.type("ports", "--probe", "tcp://x");

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains("tcp://x: expected tcp://host:port", "\"steadypull ports");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          export nosuch --to FOLDER/x.csv            | Could not find a trip     | "nosuch"
          export 2026 --to FOLDER/x.csv              | beginning of one id       | "2026"
          advise nosuch                              | Could not find a trip     | "nosuch"
          advise FOLDER/nosuch.csv                   | nosuch.csv                | no file of that name
          advise FOLDER/a.csv --vehicle Nobody       | "Nobody"                  | Imported
          advise FOLDER/a.csv --rules FOLDER/no.toml | no.toml                   | no file of that name
          advise FOLDER/a.csv --rules FOLDER/bad.toml | bad.toml:2               | No rule of this file
          advise FOLDER/a.csv --rig FOLDER/no.json   | no.json                   | no file of that name
          advise FOLDER/a.csv --rig FOLDER/bad.json  | Did you mean mass kg      | an unknown key
          advise FOLDER/a.csv --route FOLDER/no.gpx  | no.gpx                    | no file of that name
          advise FOLDER/a.csv --route FOLDER         | expected a GPX file       | found a folder
          rehearse --rules FOLDER/bad.toml           | bad.toml:2                | No rule of this file
          rehearse --rules FOLDER/no.toml            | no.toml                   | no file of that name
          rehearse nosuch                            | Could not find a trip     | "nosuch"
          import FOLDER                              | expected a file           | found a folder
          import FOLDER/nosuch.csv                   | nosuch.csv                | no file of that name
          import FOLDER/a.csv --rig FOLDER/bad.json  | bad.json                  | an unknown key
          export 2026 --to FOLDER/none/x.csv         | beginning of one id       | "2026"
          vehicle Unknown                            | "Unknown"                 | Imported
          vehicle V --import FOLDER/nosuch.json      | nosuch.json               | no file of that name
          record --port capture:FOLDER/no --vehicle V | Could not replay capture:  | no such file
          ports --probe /dev/ttyUSB97                | /dev/ttyUSB97             | no such port
          """)
  void aTaskThatFailsSaysWhy(String command, String words, String moreWords) {
    Desk.Answer answer = type(command);

    assertThat(answer.status()).as(command + answer.err()).isEqualTo(1);
    String told = answer.err() + answer.out();
    assertThat(told.replace('_', ' ')).contains(words.replace('_', ' ')).contains(moreWords);
    assertThat(told).doesNotContain("Exception").doesNotContain("\tat ");
  }

  /** A bad rig file is found before anything is kept. */
  @Test
  void aFailedImportLeavesNoVehicleBehind() {
    type("import FOLDER/a.csv --vehicle Newcomer --rig FOLDER/bad.json");

    assertThat(type("vehicle Newcomer").status()).isEqualTo(1);
  }

  @Test
  void aNameOnTwoLinesIsRefused() {
    Desk.Answer answer = desk.type("vehicle", "two\nlines", "--layout", "air-to-air");

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains("on one line");
  }

  @Test
  void aDriveOnWhichTheVehicleIsSilentKeepsNoTripAndSaysWhatToDo() {
    Desk.Answer answer =
        desk.type(
            "record",
            "--quiet",
            "--port",
            "demo:cool-day?speed=max&fault=engine-off@0-600",
            "--vehicle",
            "V",
            "--for",
            "30s");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).isEmpty();
    assertThat(answer.err()).contains("No trip was kept", "Switch the ignition on");
  }

  /** Escape sequences off a wire must not command the terminal. */
  @Test
  void nonsenseFromAnAdapterIsQuotedAsPrintableText() {
    Desk.Answer answer =
        desk.type(
            "record",
            "--port",
            "demo:cool-day?speed=max&fault=nonsense@0-600",
            "--vehicle",
            "V",
            "--for",
            "60s");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err()).contains("expected the answers of an AT-command adapter");
    assertThat(answer.err().replace("\n", "").replace("\r", ""))
        .doesNotContainPattern("[\\p{Cntrl}\uFFFD]");
  }

  @Test
  void quietTellsOnlyThatTheLinkWasLostAndIsBack() {
    Desk.Answer answer =
        desk.type(
            "record",
            "--quiet",
            "--port",
            "demo:cool-day?speed=max&fault=vanish@20-30",
            "--vehicle",
            "V",
            "--for",
            "60s");

    assertThat(answer.status()).isZero();
    assertThat(answer.err()).contains("link lost: ", "connected: ").doesNotContain("readings/s");
    assertThat(answer.err().lines().toList().getLast()).contains("connected: ");
  }
}
