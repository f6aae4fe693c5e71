package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.demo.road.Country;
import steadypull.store.LibraryException;
import steadypull.store.ToldTours;
import steadypull.store.TripLibrary;

/** Somebody who does not want roads to be remembered. */
class ForgetCommandTest {
  @TempDir Path folder;
  private Desk desk = new Desk(Path.of(""));

  @BeforeEach
  void sitDown() {
    desk = new Desk(folder);
  }

  @Test
  void saysHowMuchOfTheRoadsItForgot() throws LibraryException {
    learnATour();

    Desk.Answer answer = desk.type("forget", "--roads");

    assertThat(answer.status()).isZero();
    assertThat(answer.line()).matches("Forgot \\d+\\.\\d km of road, both ways .* pieces, .*");
    assertThat(desk.type("forget", "--roads").line()).isEqualTo("No road was remembered.");
  }

  @Test
  void aPlaceThatIsKeptOutIsListedAndCanBeRememberedAgain() throws LibraryException {
    learnATour();

    assertThat(desk.type("forget", "--around", "-41.5,-118.0,2000").line())
        .startsWith("Forgot ")
        .endsWith("No road is kept there any more.");

    assertThat(desk.type("forget", "--list").line()).isEqualTo("1  -41.500000,-118.000000,2000");
    assertThat(desk.type("forget", "--remember-again", "2").status()).isEqualTo(1);
    assertThat(desk.type("forget", "--remember-again", "1").status()).isZero();
    assertThat(desk.type("forget", "--list").out()).isEmpty();
  }

  /** Otherwise one lift would leave the other, and the home would stay unknown. */
  @Test
  void aPlaceThatIsForgottenTwiceIsKeptOutOnce() {
    desk.type("forget", "--around", "-41.5,-118.0,2000");
    desk.type("forget", "--around", "-41.5,-118.0,500");
    desk.type("forget", "--around", "-41.5,-118.0,2000");

    assertThat(desk.type("forget", "--list").lines())
        .containsExactly("1  -41.500000,-118.000000,2000", "2  -41.500000,-118.000000,500");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "41,5,-118,0,500; found \"41,5,-118,0,500\"",
        "-41.5 -118.0 500; expected degrees north",
        "91,0,500; a latitude of -90 to 90 degrees, found 91",
        "0,181,500; a longitude of -180 to 180 degrees, found 181",
        "0,0,0; a radius of 1 to 50000 m, found 0",
        "0,0,50001; a radius of 1 to 50000 m, found 50001"
      })
  void aPlaceThatIsNoneIsWrongUsage(String place, String explanation) {
    Desk.Answer answer = desk.type("forget", "--around", place);

    assertThat(answer.status()).isEqualTo(2);
    assertThat(answer.err()).contains("--around", explanation);
  }

  @Test
  void whatIsToBeForgottenMustBeSaid() {
    Desk.Answer nothing = desk.type("forget");
    Desk.Answer both = desk.type("forget", "--roads", "--list");

    assertThat(nothing.status()).isEqualTo(2);
    assertThat(nothing.err())
        .contains("expected --around LAT,LON,RADIUS_M or --roads or --list", "Add one.");
    assertThat(both.status()).isEqualTo(2);
    assertThat(both.err())
        .contains("expected one of several options, found more than one. Leave all but one away.");
  }

  private void learnATour() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      ToldTours.keep(library, Country.larkmoor().turnedAround(), 1);
      ToldTours.learn(library);
    }
  }
}
