package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;
import static steadypull.channel.Channels.ENGINE_OIL_TEMP;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.UnitSystem;

/** The rule files of a library change the shipped rules, for every vehicle and for one. */
class RuleFolderTest {
  private static final String LATER =
      """
      [[rule]]
      id = "{channel}-near-limit"
      watch = ["thermal"]
      condition = 'probability_180s >= 0.95'
      level = "caution"
      on_delay_s = 3
      off_delay_s = 20
      advise = "ease"
      why = "Only what is almost certain."
      """;
  private static final String OWN =
      """
      [[rule]]
      id = "warm"
      watch = ["charge_air_temp_out"]
      condition = 'headroom < 20'
      level = "notice"
      advise = "watch"
      why = "To be told early."
      """;
  private static final String BROKEN_SENSOR =
      """
      [[out_of_service]]
      rule = "coolant-over-limit"
      reason = "sensor on order"
      """;

  @TempDir private Path library;

  private RuleFolder folder() {
    return RuleFolder.in(library);
  }

  private void write(Path file, String text) throws IOException {
    Files.createDirectories(library.resolve("rules"));
    Files.writeString(file, text);
  }

  private RuleFolder.InForce read() {
    return folder().read(/* mayWrite= */ true);
  }

  private static boolean advises(RuleSet rules) {
    Story story = new Story(rules, Locale.ENGLISH, UnitSystem.METRIC);
    story.lasts(10, new SituationDraft().nearing(CHARGE_AIR_TEMP_OUT, 96, 105, 0.6, 170));
    return story.line().state() == AdviceLine.State.ADVISE;
  }

  @Test
  void withoutFilesTheShippedRulesAreInForceAndNothingIsWritten() {
    assertThat(advises(read().book().of("My rig"))).isTrue();
    assertThat(library.resolve("rules")).doesNotExist();
  }

  @Test
  void aRuleOfTheSameIdTakesThePlaceOfTheShippedOneAndTheOthersStay() throws IOException {
    write(folder().everyVehicle(), LATER + OWN);
    RuleFolder.InForce found = read();
    assertThat(found.complaints()).isEmpty();
    assertThat(advises(found.book().of("My rig"))).isFalse();
    assertThat(found.book().common().ids())
        .containsAll(RuleSet.shipped().ids())
        .contains("warm")
        .hasSize(RuleSet.shipped().ids().size() + 1);
  }

  @Test
  void aVehiclesOwnFileChangesItsRulesAlone() throws IOException {
    write(folder().everyVehicle(), OWN);
    write(folder().ofVehicle("Übung 1/2"), LATER);
    RuleBook book = read().book();
    assertThat(advises(book.of("Übung 1/2"))).isFalse();
    assertThat(advises(book.of("My rig"))).isTrue();
    assertThat(book.of("Übung 1/2").ids()).contains("warm");
  }

  @Test
  void aFileThatBecomesFaultyLeavesInForceWhatItHeldBefore() throws IOException {
    write(folder().everyVehicle(), LATER);
    read();
    write(folder().everyVehicle(), LATER.replace("probability_180s", "probabilty_180s"));
    RuleFolder.InForce found = read();
    assertThat(advises(found.book().common())).isFalse();
    assertThat(found.complaints())
        .singleElement()
        .asString()
        .contains("every-vehicle.toml:4:14: unknown name \"probabilty_180s\". Did you mean")
        .contains("probability_180s")
        .endsWith("What this file held before it was changed stays in force. Correct it.");
  }

  @Test
  void aFileThatWasNeverGoodLeavesTheOthersInForce() throws IOException {
    write(folder().everyVehicle(), "[[rule]]\nid = 5\n");
    RuleFolder.InForce found = read();
    assertThat(found.book().common().ids()).isEqualTo(RuleSet.shipped().ids());
    assertThat(found.complaints().getFirst())
        .contains("every-vehicle.toml:2:1")
        .endsWith("The rules without this file are in force. Correct it.");
  }

  @Test
  void whoOnlyReadsLeavesNothingBehind() throws IOException {
    write(folder().everyVehicle(), LATER);
    folder().read(/* mayWrite= */ false);
    try (Stream<Path> files = Files.list(library.resolve("rules"))) {
      assertThat(files).containsExactly(folder().everyVehicle());
    }
  }

  @Test
  void aRuleOutOfServiceIsToldWithItsReasonAndTakesPartInNothing() throws IOException {
    write(folder().everyVehicle(), BROKEN_SENSOR);
    Story story = new Story(read().book().common(), Locale.ENGLISH, UnitSystem.METRIC);
    var hot = new SituationDraft().nearing(ENGINE_COOLANT_TEMP, 114, 112, 1, 0);
    assertThat(Story.words(story.lasts(20, hot)))
        .startsWith("out-of-service coolant-over-limit")
        .doesNotContain("raised coolant-over-limit", "escalated coolant-over-limit")
        .contains("raised coolant-near-limit");
    assertThat(story.told.getFirst().text()).isEqualTo("sensor on order");
    var oil = new SituationDraft().nearing(ENGINE_OIL_TEMP, 135, 130, 1, 0);
    assertThat(Story.words(story.lasts(20, oil))).contains("escalated engine-oil-over-limit");
  }

  @Test
  void anUnknownRuleOutOfServiceIsPlacedAndGuessed() throws RuleFileException {
    RuleSet changes =
        RuleSet.parse("my.toml", BROKEN_SENSOR.replace("coolant-over", "coolant-ower"));
    assertThatThrownBy(() -> RuleSet.shipped().changedBy("my.toml", changes))
        .isInstanceOf(RuleFileException.class)
        .hasMessageContaining("my.toml:2:1: unknown rule \"coolant-ower-limit\". Did you mean")
        .hasMessageContaining("coolant-over-limit");
  }

  @Test
  void aListOfRulesTellsWhatIsChangedAndWhatIsOut() throws IOException {
    write(folder().everyVehicle(), LATER + OWN + BROKEN_SENSOR);
    assertThat(read().book().common().listed(RuleSet.shipped()))
        .filteredOn(each -> each.isChanged() || !each.outOfService().isEmpty())
        .extracting(each -> each.id() + " " + each.outOfService())
        .containsExactlyInAnyOrder(
            "{channel}-near-limit ",
            "warm ",
            "{channel}-over-limit coolant-over-limit: sensor on order");
  }

  /** What the README shows may be copied. */
  @Test
  void theRulesOfTheReadmeAreTaken() throws Exception {
    String toml =
        Files.readAllLines(Path.of("..", "README.md")).stream()
            .dropWhile(line -> !line.startsWith("    extends = "))
            .takeWhile(line -> line.isEmpty() || line.startsWith("    "))
            .map(line -> line.isEmpty() ? line : line.substring(4))
            .collect(Collectors.joining("\n"));
    RuleSet changes = RuleSet.parse("README.md", toml);
    assertThat(changes.isChanges()).isTrue();
    assertThat(RuleSet.shipped().changedBy("README.md", changes).ids()).contains("gearbox-warm");
  }

  @Test
  void aFileWithoutBoundIsRefused() throws IOException {
    write(folder().everyVehicle(), "#".repeat(200_001));
    assertThat(read().complaints().getFirst()).contains("a file of 200001 bytes");
    StringBuilder many = new StringBuilder();
    for (int i = 0; i <= 200; i++) {
      many.append(OWN.replace("\"warm\"", "\"warm-" + i + "\""));
    }
    assertThatThrownBy(() -> RuleSet.parse("my.toml", many.toString()))
        .hasMessageContaining("expected at most 200 rules, found 201");
  }
}
