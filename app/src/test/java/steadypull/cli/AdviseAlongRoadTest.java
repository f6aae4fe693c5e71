package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Course;
import steadypull.demo.road.Road;

/**
 * Two drives up the hot grade, one that knew nothing of the road and one along a route, judged
 * again with what somebody knows of it: trips, their tables with and without positions, and routes
 * good and bad.
 */
@Execution(ExecutionMode.CONCURRENT)
class AdviseAlongRoadTest {
  private static final String VEHICLE = "Wattle 2";

  @TempDir private static Path folder;
  private static Desk desk;
  private static String trip;
  private static String route;
  private static String flat;
  private static String table;
  private static String blind;
  private static Desk.Answer guided;

  @BeforeAll
  static void driveUpTheGrade() throws Exception {
    desk = new Desk(folder.resolve("library"));
    route = route("route.gpx", 0, 40, true);
    flat = route("flat.gpx", 0, 40, false);
    trip = record().out().strip();
    guided = record("--route", route);
    table = exported("table.csv");
    blind = exported("blind.csv", "--no-positions");
  }

  private static Desk.Answer record(String... more) {
    String scenario = "long-hot-grade?speed=15&start=240";
    List<String> all =
        new ArrayList<>(
            List.of(
                "record",
                "--port",
                "demo:" + scenario,
                "--receiver",
                "demo-receiver:" + scenario,
                "--vehicle",
                VEHICLE,
                "--for",
                "5m"));
    all.addAll(List.of(more));
    Desk.Answer answer = desk.type(all.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    return answer;
  }

  @Test
  void aTripIsJudgedWithWhatItWasToldOnItsDrive() throws Exception {
    String trip = guided.out().strip();
    List<JsonNode> lines = new ArrayList<>();
    for (String line : advise(trip).lines()) {
      lines.add(new ObjectMapper().readTree(line));
    }
    assertThat(ToldAdvice.replayed(lines)).isEqualTo(ToldAdvice.live(guided.err())).isNotEmpty();

    List<String> told = forecasts(trip);
    assertThat(forecasts(trip, "--no-memory")).isNotEqualTo(told);
    assertThat(forecasts(trip, "--route", route)).as("the same route again").hasSameSizeAs(told);
  }

  @Test
  void aTripThatKnewNothingIsJudgedWithoutARoad() {
    assertThat(forecasts(trip)).isEqualTo(forecasts(trip, "--no-memory"));
  }

  @Test
  void aRouteIsKnownAheadWhereTheDriveKnewNothing() {
    assertThat(advise(trip, "--route", route).err())
        .contains("route: ", "with elevations all along");
    assertThat(forecasts(trip, "--route", route)).isNotEqualTo(forecasts(trip));
    assertThat(forecasts(trip, "--route", route, "--no-memory"))
        .as("off the route nobody knows anything, on it the route does")
        .isNotEqualTo(forecasts(trip));
  }

  @Test
  void aTableWithoutPositionsStartsAtTheRoutesFirstPoint() throws Exception {
    String fromHere = route("from-here.gpx", startMetres(), 40, true);
    List<String> seeing = forecasts(blind, "--vehicle", VEHICLE, "--route", fromHere);
    List<String> elsewhere = forecasts(blind, "--vehicle", VEHICLE, "--route", route);
    List<String> nothing = forecasts(blind, "--vehicle", VEHICLE);

    assertThat(advise(blind, "--vehicle", VEHICLE, "--route", fromHere).err())
        .contains("no positions: the drive is taken to begin at the route's first point")
        .contains("half a unit added where whole km/h are told");
    assertThat(seeing)
        .hasSameSizeAs(nothing)
        .isNotEqualTo(nothing)
        .as("another first point, another road ahead")
        .isNotEqualTo(elsewhere);
  }

  @Test
  void aTableWithPositionsIsJudgedWithWhatTheLibraryRemembers() {
    List<String> nothing = forecasts(table, "--vehicle", VEHICLE, "--no-memory");

    assertThat(forecasts(blind, "--vehicle", VEHICLE)).hasSameSizeAs(nothing);
    assertThat(forecasts(table, "--vehicle", VEHICLE)).isNotEqualTo(nothing);
  }

  /** Grades of a road ahead may tell which road it is, so they go where the places go. */
  @Test
  void aTripFileCarriesWhatWasToldOfTheRoadUnlessPlacesAreLeftOut() {
    String trip = guided.out().strip();
    assertThat(carried(trip)).isEqualTo(forecasts(trip));
    assertThat(carried(trip, "--no-positions")).isEqualTo(forecasts(trip, "--no-memory"));
  }

  private static List<String> carried(String trip, String... options) {
    String name = "carried" + options.length;
    Path file = folder.resolve(name + ".trip");
    List<String> all = new ArrayList<>(List.of("export", trip, "--to", file.toString()));
    all.addAll(List.of(options));
    assertThat(desk.type(all.toArray(String[]::new)).status()).isZero();
    Desk elsewhere = new Desk(folder.resolve(name));
    String there = elsewhere.type("import", file.toString()).line();
    return elsewhere.type("advise", there, "--forecasts", "10").lines().stream()
        .filter(line -> line.contains("\"forecast\""))
        .toList();
  }

  @Test
  void thatTheLibraryLearnedFromTheVeryTableIsSaid() throws Exception {
    Desk other = new Desk(folder.resolve("other"));
    String known = other.type("import", table).line();
    assertThat(other.type("advise", table, "--rig", rig()).err())
        .contains("the library knows this table as trip " + known, "--no-memory goes without");
    assertThat(other.type("advise", table, "--no-memory").err()).isEmpty();
    assertThat(advise(table, "--rig", rig()).err()).isEmpty();
  }

  @Test
  void aTableIsJudgedWhereNobodyHasALibrary() throws Exception {
    Desk nobody = new Desk(folder.resolve("nobody"));
    assertThat(nobody.type("advise", table, "--rig", rig()).status()).isZero();
    assertThat(nobody.type("advise", blind, "--rig", rig(), "--route", route).status()).isZero();
    assertThat(folder.resolve("nobody")).doesNotExist();
  }

  @Test
  void aRouteThatTellsNoGradeIsRefusedWhereNobodyElseDoes() throws Exception {
    for (List<String> command :
        List.of(
            List.of(trip, "--route", flat),
            List.of(blind, "--route", flat),
            List.of(table, "--no-memory", "--route", flat))) {
      Desk.Answer answer = advise(command.toArray(String[]::new));
      assertThat(answer.status()).as(command.toString()).isEqualTo(1);
      assertThat(answer.out()).isEmpty();
      assertThat(answer.err().replace("\n", " "))
          .containsPattern("Could not look ahead along the route in .*: expected elevations,")
          .contains("found none that tell any. Take a route or track with elevations.");
    }
    assertThat(advise(table, "--rig", rig(), "--route", flat).status())
        .as("the library may know")
        .isZero();
  }

  @Test
  void aRouteThatIsBrokenOrTooSparseIsRefusedInFourParts() throws Exception {
    Path broken = folder.resolve("broken.gpx");
    Files.writeString(broken, Files.readString(Path.of(route)).replace("</gpx>", ""));
    assertThat(advise(trip, "--route", broken.toString()).err())
        .contains("broken.gpx, line", "expected the rest of a GPX file", "Copy the file again.");
    assertThat(advise(trip, "--route", folder.resolve("no.gpx").toString()).err())
        .contains("Could not read", "no.gpx: expected a GPX file, found no file", "check the path");
    Desk.Answer sparse = advise(trip, "--route", route("sparse.gpx", 0, 5000, true));
    assertThat(sparse.status()).isEqualTo(1);
    assertThat(sparse.out()).isEmpty();
    assertThat(sparse.err())
        .contains("expected points at most 1 km apart, found none that are", "with more points");
  }

  private static List<String> forecasts(String... arguments) {
    List<String> all = new ArrayList<>(List.of(arguments));
    all.addAll(List.of("--forecasts", "10"));
    Desk.Answer answer = advise(all.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    return answer.lines().stream().filter(line -> line.contains("\"forecast\"")).toList();
  }

  private static Desk.Answer advise(String... arguments) {
    List<String> all = new ArrayList<>(List.of("advise"));
    all.addAll(List.of(arguments));
    return desk.type(all.toArray(String[]::new));
  }

  private static String exported(String name, String... options) {
    Path file = folder.resolve(name);
    List<String> all = new ArrayList<>(List.of("export", trip, "--to", file.toString()));
    all.addAll(List.of(options));
    Desk.Answer answer = desk.type(all.toArray(String[]::new));
    assertThat(answer.status()).as(answer.err()).isZero();
    return file.toString();
  }

  /** Where on the road the drive began, as its first position says, some metres off. */
  private static double startMetres() throws IOException {
    List<String> lines = Files.readAllLines(Path.of(table));
    int column = List.of(lines.getFirst().split(",")).indexOf("latitude[deg]");
    List<String> first =
        lines.stream()
            .skip(1)
            .map(line -> List.of(line.split(",", -1)))
            .filter(cells -> !cells.get(column).isEmpty())
            .findFirst()
            .orElseThrow();
    double latitude = Double.parseDouble(first.get(column));
    double best = 0;
    for (double metres = 0; metres < road().length(); metres += 5) {
      if (Math.abs(road().at(metres).latitude() - latitude)
          < Math.abs(road().at(best).latitude() - latitude)) {
        best = metres;
      }
    }
    return best - 24 * Double.parseDouble(first.getFirst());
  }

  private static String rig() throws IOException {
    return Files.writeString(folder.resolve("rig.json"), "{\"mass_kg\": 7200}").toString();
  }

  private static Road road() {
    return (Road)
        ((Course.OnRoad) DemoWorld.scenario("long-hot-grade").orElseThrow().course()).road();
  }

  private static String route(String name, double from, double apart, boolean hasElevations)
      throws IOException {
    StringBuilder text =
        new StringBuilder(
            "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"us\">"
                + "<trk><trkseg>\n");
    for (double metres = from; metres < road().length(); metres += apart) {
      Road.Place place = road().at(metres);
      text.append(
          String.format(
              Locale.ROOT,
              "<trkpt lat=\"%.6f\" lon=\"%.6f\">%s</trkpt>%n",
              place.latitude(),
              place.longitude(),
              hasElevations
                  ? String.format(Locale.ROOT, "<ele>%.1f</ele>", place.altitude())
                  : ""));
    }
    return Files.writeString(folder.resolve(name), text + "</trkseg></trk></gpx>\n").toString();
  }
}
