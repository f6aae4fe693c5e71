package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import steadypull.adapter.ReaderSettings.Pace;
import steadypull.adapter.diagnostic.DefinedSignal;

/** Stories of whole drives in scripted time. */
class VehicleReaderTest {
  private static final Set<String> WANTED =
      Set.of(
          "01.04", "01.05", "01.0B", "01.0C", "01.0D", "01.0F", "01.49", "01.61", "01.62", "01.33",
          "01.46", "01.67.1", "01.67.2", "01.77.1", "01.77.2", "01.77.3", "01.5E");

  private static final DefinedSignal FLUID =
      new DefinedSignal(
          0x1E1C, "7E1", "transmission fluid", 0, 16, false, 0.0625, -40, "degC", -40, 215);

  private final ScriptedVehicle vehicle =
      new ScriptedVehicle()
          .parameter("7E8", 0x04, "7F")
          .parameter("7E8", 0x05, "82")
          .parameter("7E8", 0x0B, "C8")
          .parameter("7E8", 0x0C, "1F40")
          .parameter("7E8", 0x0D, "50")
          .parameter("7E8", 0x0F, "4B")
          .parameter("7E8", 0x33, "55")
          .parameter("7E8", 0x46, "4B")
          .parameter("7E8", 0x61, "B4")
          .parameter("7E8", 0x67, "03806E")
          .parameter("7E8", 0x77, "037A5C0000")
          .parameter("7E9", 0x0C, "0000")
          .parameter("7E9", 0x0D, "51");
  private final ScriptedAdapter adapter = new ScriptedAdapter(vehicle);
  private final Recording recording = new Recording();

  private ReaderSettings settings(Pace pace) {
    return new ReaderSettings(WANTED, List.of(FLUID), pace);
  }

  private void drive(double seconds) {
    drive(seconds, Pace.POLITE);
  }

  private void drive(double seconds, Pace pace) {
    drive(seconds, pace, now -> {});
  }

  /** Runs a reader for a span of scripted time; events may change the scene on the way. */
  private void drive(double seconds, Consumer<Double> events) {
    drive(seconds, Pace.POLITE, events);
  }

  private void drive(double seconds, Pace pace, Consumer<Double> events) {
    VehicleReader reader = new VehicleReader(adapter, settings(pace), recording);
    double end = adapter.clock.seconds() + seconds;
    recording.at =
        now -> {
          events.accept(now);
          if (now >= end) {
            reader.close();
          }
        };
    reader.run();
  }

  @Test
  void bytesBecomeReadingsOfTheEngine() {
    vehicle.fixed.put(
        "7DF 0902",
        String.join(
            "", ScriptedVehicle.frames("7E8", "490201" + "315A5A5450394147315230303030303432")));

    drive(20);

    // Values: worked example of a request for six parameters, computed from SAE J1979 scaling.
    assertThat(recording.of("01.0C")).isNotEmpty();
    assertThat(recording.of("01.0C")).allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.05")).allMatch(r -> r.value() == 90.0);
    assertThat(recording.of("01.04").getFirst().value()).isCloseTo(49.80, within(0.01));
    assertThat(recording.of("01.67.2").getFirst().value()).isEqualTo(70.0);
    assertThat(recording.of("01.77.1").getFirst().value()).isEqualTo(82.0);
    assertThat(recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
    assertThat(recording.connected().adapter()).isEqualTo("SCRIPTED ADAPTER 1");
    assertThat(recording.connected().protocol()).contains("15765-4");
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  // The transmission answers the same functional requests; its values must not mix in.
  @Test
  void theEngineIsBelievedWhereTwoControlUnitsAnswer() {
    drive(10);

    assertThat(recording.of("01.0D")).allMatch(r -> r.controlUnit().equals("7E8"));
    assertThat(recording.of("01.0D")).allMatch(r -> r.value() == 80.0);
  }

  @Test
  void onlySensorsThatExistAreOffered() {
    drive(10);

    assertThat(recording.connected().signals())
        .contains("01.77.1", "01.77.2", "01.67.1")
        .doesNotContain("01.77.3", "01.5E", "01.62");
    assertThat(recording.of("01.77.3")).isEmpty();
  }

  @Test
  void parametersShareRequestsOnceTheirLengthsAreLearnt() {
    drive(10);

    assertThat(adapter.sent).anyMatch(line -> line.startsWith("01") && line.length() == 14);
    assertThat(adapter.sent.indexOf("010C")).isLessThan(firstIndexOfPack()).isNotNegative();
  }

  private int firstIndexOfPack() {
    for (int i = 0; i < adapter.sent.size(); i++) {
      if (adapter.sent.get(i).startsWith("01") && adapter.sent.get(i).length() > 4) {
        return i;
      }
    }
    return -1;
  }

  @Test
  void politePaceKeepsToTwentyRequestsASecondAndToTheClasses() {
    drive(60);

    long requests = adapter.sent.stream().filter(line -> line.matches("[0-9A-F]+")).count();
    assertThat(requests / 60.0).isLessThanOrEqualTo(20);
    // 0.25 s, 1 s and 10 s classes over about 59 s, less the start.
    assertThat(recording.of("01.0C").size()).isBetween(200, 245);
    assertThat(recording.of("01.67.1").size()).isBetween(50, 80);
    assertThat(recording.of("01.46").size()).isBetween(5, 9);
  }

  @Test
  void fullPaceUsesTheWholeLink() {
    drive(60, Pace.FULL);

    // A reply takes 30 ms, so 33 requests a second is the most; fast parameters get most of them.
    assertThat(recording.of("01.0C").size()).isGreaterThan(900);
    assertThat(recording.of("01.46").size()).isGreaterThanOrEqualTo(5);
  }

  @Test
  void controlUnitThatKeepsSilentToSeveralIsAskedSingly() {
    vehicle.answersSeveral = false;

    drive(20);

    assertThat(recording.of("01.0C").size()).isGreaterThan(40);
    assertThat(lastSent(50)).allMatch(line -> !line.startsWith("01") || line.length() == 4);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  private List<String> lastSent(int count) {
    return adapter.sent.subList(adapter.sent.size() - count, adapter.sent.size());
  }

  // One lost answer while learning must not cost the whole drive its packed requests.
  @Test
  void parameterWhoseAnswerWasLostIsLearntLater() {
    List<String> lost = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E803410D") && lost.isEmpty()) {
            lost.add(reply);
            return "NO DATA\r\r>";
          }
          return reply;
        };

    drive(20);

    assertThat(lost).hasSize(1);
    assertThat(recording.of("01.0D")).hasSizeGreaterThan(40);
    assertThat(lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  // Parameter 0D changes its length in packs only: everything after it would shift.
  @Test
  void answerWithAStrangerInItIsDiscardedAndParametersAreAskedSingly() {
    adapter.wire =
        reply ->
            reply.startsWith("7E81") && reply.contains("0D50")
                ? reply.replace("0D50", "0E50")
                : reply;

    drive(20);

    assertThat(recording.of("01.0D")).isNotEmpty().allMatch(r -> r.value() == 80.0);
    assertThat(lastSent(30)).allMatch(line -> !line.startsWith("01") || line.length() == 4);
  }

  @Test
  void vehiclesOwnSignalIsAskedAtItsControlUnitAndTheHeaderRestored() {
    vehicle.fixed.put("7E1 221E1C", "7E905621E1C0820AAAA\r");

    drive(10);

    // 0x0820 = 2080; 2080 * 0.0625 - 40 = 90.
    assertThat(recording.of("22.1E1C.0").getFirst().value()).isEqualTo(90.0);
    assertThat(recording.of("22.1E1C.0").getFirst().controlUnit()).isEqualTo("7E9");
    assertThat(recording.of("22.1E1C.0").size()).isGreaterThan(5);
    int request = adapter.sent.indexOf("221E1C");
    assertThat(adapter.sent.subList(request - 1, request + 2))
        .containsExactly("ATSH7E1", "221E1C", "ATSH7DF");
  }

  @Test
  void refusedIdentifierIsNotAskedAgain() {
    vehicle.fixed.put("7E1 221E1C", "7E9037F2231AAAAAAAA\r");

    drive(10);

    assertThat(adapter.sent.stream().filter("221E1C"::equals)).hasSize(1);
    assertThat(recording.story()).endsWith("Connected", "Closed");
  }

  // ISO 14229-1 code 78: the answer comes later, within 5 s, to the request that is still open.
  @Test
  void pendingAnswerIsWaitedFor() {
    vehicle.fixed.put("7E1 221E1C", "7E9037F2278AAAAAAAA\r|7E905621E1C0820AAAA\r");

    drive(40);

    assertThat(recording.of("22.1E1C.0").size()).isGreaterThan(5);
    assertThat(recording.of("22.1E1C.0")).allMatch(r -> r.value() == 90.0);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(adapter.sent).as("nothing interrupts the open request").doesNotContain("");
  }

  @Test
  void repliesCutAnywhereAreStillRead() {
    adapter.mostBytesPerRead = 1;

    drive(10);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  @Test
  void engineOffIsToldAndTheVehicleFoundAgain() {
    drive(60, now -> vehicle.isAwake = now < 15 || now > 35);

    assertThat(recording.story())
        .containsExactly(
            "Opening",
            "Searching",
            "Connected",
            "Searching",
            "VehicleSilent",
            "Connected",
            "Closed");
    assertThat(adapter.openings).isEqualTo(1);
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(50);
  }

  @Test
  void silentVehicleIsAskedSeldom() {
    vehicle.isAwake = false;

    drive(60);

    assertThat(recording.story())
        .containsExactly("Opening", "Searching", "VehicleSilent", "Closed");
    assertThat(adapter.sent.stream().filter("0100"::equals).count()).isBetween(8L, 13L);
  }

  @Test
  void signOfLifeComesEverySecondWhateverHappens() {
    drive(
        90,
        now -> {
          vehicle.isAwake = now < 20 || now > 35;
          adapter.isMute = now > 50 && now < 60;
          adapter.isGone = now > 70 && now < 80;
        });

    for (int i = 1; i < recording.states.size(); i++) {
      double gap = recording.states.get(i).seconds() - recording.states.get(i - 1).seconds();
      assertThat(gap).as("gap before " + recording.states.get(i)).isLessThanOrEqualTo(1.0);
    }
    assertThat(recording.story()).contains("VehicleSilent", "Lost");
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(85);
  }

  @Test
  void vanishedPortIsOpenedAgainWithGrowingPatience() {
    drive(60, now -> adapter.isGone = now > 10);

    List<Integer> waits = new ArrayList<>();
    String last = "";
    for (Recording.Told told : recording.states) {
      String name = told.state().getClass().getSimpleName();
      if (told.state() instanceof LinkState.Lost(String reason, int retrySeconds)
          && !last.equals("Lost")) {
        waits.add(retrySeconds);
        assertThat(reason).contains("scripted:port", "gone", "Check the plug");
      }
      last = name;
    }
    assertThat(waits).startsWith(1, 2, 5, 10, 10);
  }

  @Test
  void adapterThatRestartedIsSetUpAgain() {
    List<Double> restartedAt = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (adapter.clock.seconds() > 12 && restartedAt.isEmpty()) {
            restartedAt.add(adapter.clock.seconds());
            return "\r\rLV RESET\r\r>";
          }
          return reply;
        };

    drive(30);

    assertThat(adapter.sent.stream().filter("ATE0"::equals)).hasSize(2);
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(28);
    assertThat(adapter.openings).isEqualTo(1);
  }

  @Test
  void nonsenseFromTheAdapterIsToldAndRecoveredFrom() {
    adapter.wire =
        reply -> {
          double now = adapter.clock.seconds();
          return now > 12 && now < 30 ? "\u00FE\u0001WHAT IS THIS\r>" : reply;
        };

    drive(60);

    assertThat(recording.story()).contains("Lost");
    assertThat(recording.readings).allMatch(r -> Double.isFinite(r.value()));
    assertThat(recording.of("01.0C")).allMatch(r -> r.value() == 2000.0);
    assertThat(recording.of("01.0C").getLast().nanoTime() / 1e9).isGreaterThan(55);
  }

  @Test
  void somethingElseOnThePortIsNamed() {
    adapter.wire = reply -> "$SOMETHING,ELSE*00\r\n";

    drive(10);

    assertThat(recording.states)
        .anyMatch(
            told ->
                told.state() instanceof LinkState.Lost lost
                    && lost.reason().contains("SOMETHING,ELSE")
                    && lost.reason().contains("expected the answers of an AT-command adapter"));
  }

  @Test
  void deadPortIsToldInOneMessage() {
    adapter.isMute = true;

    drive(10);

    assertThat(recording.story()).startsWith("Opening", "Lost", "Opening");
    assertThat(recording.story()).doesNotContain("Searching");
  }

  @Test
  void everythingSentOnlyReads() {
    drive(
        120,
        now -> {
          vehicle.isAwake = now < 20 || now > 50;
          adapter.isMute = now > 70 && now < 75;
        });

    assertThat(adapter.sent)
        .allMatch(
            line ->
                line.isEmpty()
                    || line.matches(
                        "(01|09|22)[0-9A-F]+|AT(I|Z|WS|PC|DPN?|E0|L0|S0|H1|CAF1|AT1|M0)|ATTP(0|A6)|ATSH(7DF|7E1)"));
  }

  @Test
  void presentProtocolIsTriedFirstAfterALoss() {
    drive(40, now -> adapter.isGone = now > 10 && now < 12);

    assertThat(adapter.sent.stream().filter(line -> line.startsWith("ATTP")))
        .containsExactly("ATTP0", "ATTPA6");
  }

  @Test
  void interruptedThreadEndsTheReader() {
    VehicleReader reader = new VehicleReader(adapter, settings(Pace.POLITE), recording);
    recording.at =
        now -> {
          if (now > 5) {
            Thread.currentThread().interrupt();
          }
        };

    reader.run();

    assertThat(Thread.interrupted()).isTrue();
    assertThat(recording.story()).endsWith("Connected", "Closed");
  }

  @Test
  void readerClosedBeforeItRunsOpensNothing() {
    VehicleReader reader = new VehicleReader(adapter, settings(Pace.POLITE), recording);

    reader.close();
    reader.run();

    assertThat(adapter.openings).isZero();
    assertThat(recording.story()).containsExactly("Closed");
  }

  @Test
  void signalWithAHeaderThatIsNoneIsRefusedAtOnce() {
    DefinedSignal wrong = new DefinedSignal(1, "123", "wrong", 0, 8, false, 1, 0, "1", 0, 255);

    assertThatThrownBy(
            () ->
                new VehicleReader(
                    adapter, new ReaderSettings(WANTED, List.of(wrong), Pace.POLITE), recording))
        .hasMessageContaining("\"wrong\"")
        .hasMessageContaining("\"123\"");
  }

  // Parameter 4F declares 640 kPa full scale: 100 * 640 / 255 = 251.0 (SAE J1699-3 cases for 4F).
  @Test
  void declaredFullScaleIsUsedForManifoldPressure() {
    vehicle.parameter("7E8", 0x0B, "64").parameter("7E8", 0x4F, "00000040");

    drive(5);

    assertThat(recording.of("01.0B"))
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.value()).isCloseTo(251.0, within(0.05)));
  }
}
