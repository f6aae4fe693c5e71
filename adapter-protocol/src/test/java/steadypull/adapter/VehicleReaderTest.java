package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.ReaderSettings.Pace;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** Stories of whole drives in scripted time. */
class VehicleReaderTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void bytesBecomeReadingsOfTheEngine() {
    vehicle.fixed.put(
        "7DF 0902",
        String.join(
            "", ScriptedVehicle.frames("7E8", "490201" + "315A5A5450394147315230303030303432")));

    drive.go(20);

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
    drive.go(10);

    assertThat(recording.of("01.0D")).allMatch(r -> r.controlUnit().equals("7E8"));
    assertThat(recording.of("01.0D")).allMatch(r -> r.value() == 80.0);
  }

  @Test
  void onlySensorsThatExistAreOffered() {
    drive.go(10);

    assertThat(recording.connected().signals())
        .contains("01.77.1", "01.77.2", "01.67.1")
        .doesNotContain("01.77.3", "01.5E", "01.62");
    assertThat(recording.of("01.77.3")).isEmpty();
  }

  @Test
  void parametersShareRequestsOnceTheirLengthsAreLearnt() {
    drive.go(10);

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
    drive.go(60);

    long requests = adapter.sent.stream().filter(line -> line.matches("[0-9A-F]+")).count();
    assertThat(requests / 60.0).isLessThanOrEqualTo(20);
    // 0.25 s, 1 s and 10 s classes over about 59 s, less the start.
    assertThat(recording.of("01.0C").size()).isBetween(200, 245);
    assertThat(recording.of("01.67.1").size()).isBetween(50, 80);
    assertThat(recording.of("01.46").size()).isBetween(5, 9);
  }

  @Test
  void whatIsSeldomWantedIsAskedForEveryTenSecondsUnlessItRidesAlong() {
    drive.seldom = Set.of("01.0F", "01.67.2");
    drive.go(60);

    assertThat(recording.of("01.0F").size()).isBetween(5, 9);
    assertThat(recording.of("01.67.2").size()).isBetween(50, 80);
  }

  // Also while lengths are learnt, one request for each parameter.
  @Test
  void politePaceIsKeptFromTheFirstRequestOn() {
    drive.go(20);

    List<Double> requests = new ArrayList<>();
    for (int i = 0; i < adapter.sent.size(); i++) {
      if (!adapter.sent.get(i).startsWith("AT")) {
        requests.add(adapter.sentAtSeconds.get(i));
      }
    }
    for (int i = 20; i < requests.size(); i++) {
      assertThat(requests.get(i) - requests.get(i - 20)).isGreaterThan(0.9999);
    }
  }

  @Test
  void fullPaceUsesTheWholeLink() {
    drive.go(60, Pace.FULL, now -> {});

    // A reply takes 30 ms, so 33 requests a second is the most; fast parameters get most of them.
    assertThat(recording.of("01.0C").size()).isGreaterThan(900);
    assertThat(recording.of("01.46").size()).isGreaterThanOrEqualTo(5);
  }

  @Test
  void controlUnitThatKeepsSilentToSeveralIsAskedSingly() {
    vehicle.answersSeveral = false;

    drive.go(20);

    assertThat(recording.of("01.0C").size()).isGreaterThan(40);
    assertThat(drive.lastSent(50)).allMatch(line -> !line.startsWith("01") || line.length() <= 5);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
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

    drive.go(20);

    assertThat(lost).hasSize(1);
    assertThat(recording.of("01.0D")).hasSizeGreaterThan(40);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  // ISO 14229-1 codes 21 and 78: it is the moment that does not suit, not the way of asking.
  @ParameterizedTest
  @ValueSource(strings = {"7E8037F0121AAAAAAAA\r", "7E8037F0178AAAAAAAA\r"})
  void controlUnitThatIsBusyOnceIsAskedForSeveralAgain(String refusal) {
    List<String> refused = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E81") && adapter.clock.seconds() > 8 && refused.isEmpty()) {
            refused.add(reply);
            return refusal + "\r>";
          }
          return reply;
        };

    drive.go(20);

    assertThat(refused).hasSize(1);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  @Test
  void answerThatWasDamagedOnceDoesNotEndAskingForSeveral() {
    List<String> damaged = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E81") && reply.contains("0D50") && damaged.isEmpty()) {
            damaged.add(reply);
            return reply.replace("0D50", "0E50");
          }
          return reply;
        };

    drive.go(20);

    assertThat(damaged).hasSize(1);
    assertThat(recording.of("01.0D")).allMatch(r -> r.value() == 80.0);
    assertThat(drive.lastSent(20)).anyMatch(line -> line.startsWith("01") && line.length() > 10);
  }

  // While a bus wakes up, one control unit may answer the search and another be late.
  @Test
  void controlUnitThatMissedTheSearchIsFoundAllTheSame() {
    List<String> cut = new ArrayList<>();
    adapter.wire =
        reply -> {
          if (reply.startsWith("7E8064100") && cut.isEmpty()) {
            cut.add(reply);
            return reply.substring(reply.indexOf("7E9"));
          }
          return reply;
        };

    drive.go(10);

    assertThat(cut).hasSize(1);
    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.controlUnit().equals("7E8"));
  }

  // Parameter 0D changes its length in packs only: everything after it would shift.
  @Test
  void answerWithAStrangerInItIsDiscardedAndParametersAreAskedSingly() {
    adapter.wire =
        reply ->
            reply.startsWith("7E81") && reply.contains("0D50")
                ? reply.replace("0D50", "0E50")
                : reply;

    drive.go(20);

    assertThat(recording.of("01.0D")).isNotEmpty().allMatch(r -> r.value() == 80.0);
    assertThat(drive.lastSent(30)).allMatch(line -> !line.startsWith("01") || line.length() <= 5);
  }

  @Test
  void vehiclesOwnSignalIsAskedAtItsControlUnitAndTheHeaderRestored() {
    vehicle.fixed.put("7E1 221E1C", "7E905621E1C0820AAAA\r");

    drive.go(10);

    // 0x0820 = 2080; 2080 * 0.0625 - 40 = 90.
    assertThat(recording.of("22.1E1C.0").getFirst().value()).isEqualTo(90.0);
    assertThat(recording.of("22.1E1C.0").getFirst().controlUnit()).isEqualTo("7E9");
    assertThat(recording.of("22.1E1C.0").size()).isGreaterThan(5);
    int request = adapter.sent.indexOf("221E1C");
    assertThat(adapter.sent.subList(request - 1, request + 2))
        .containsExactly("ATSH7E1", "221E1C", "ATSH7DF");
  }

  // An adapter would cut DA18F1 to 0F1 on an 11-bit bus, which is no diagnostic identifier.
  @Test
  void signalBehindAHeaderOfAnotherProtocolIsNeverAsked() {
    drive.defined =
        List.of(new DefinedSignal(1, "18DA18F1", "long", 0, 8, false, 1, 0, "1", 0, 255));

    drive.go(10);

    assertThat(recording.of("01.0C")).isNotEmpty();
    assertThat(adapter.sent).noneMatch(line -> line.startsWith("ATSH") || line.startsWith("22"));
  }

  @Test
  void refusedIdentifierIsAskedOnceMoreAndNeverAgain() {
    vehicle.fixed.put("7E1 221E1C", "7E9037F2231AAAAAAAA\r");

    drive.go(10);

    assertThat(adapter.sent.stream().filter("221E1C"::equals)).hasSize(2);
    assertThat(recording.story()).endsWith("Connected", "Closed");
  }

  // ISO 14229-1 code 78: the answer comes later, within 5 s, to the request that is still open.
  @Test
  void pendingAnswerIsWaitedFor() {
    vehicle.fixed.put("7E1 221E1C", "7E9037F2278AAAAAAAA\r|7E905621E1C0820AAAA\r");

    drive.go(40);

    assertThat(recording.of("22.1E1C.0").size()).isGreaterThan(5);
    assertThat(recording.of("22.1E1C.0")).allMatch(r -> r.value() == 90.0);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
    assertThat(adapter.sent).as("nothing interrupts the open request").doesNotContain("");
  }

  @Test
  void repliesCutAnywhereAreStillRead() {
    adapter.mostBytesPerRead = 1;

    drive.go(10);

    assertThat(recording.of("01.0C")).isNotEmpty().allMatch(r -> r.value() == 2000.0);
  }

  @Test
  void everythingSentOnlyReads() {
    drive.go(
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
                        "(01|02|09|22)[0-9A-F]+|0[37A]|AT(I|Z|WS|PC|RV|DPN?|E0|L0|S0|H1|CAF1|AT1|M0|ST[0-9A-F]{2})|ATTP(0|A6|[6-9])|ATSH(7DF|7E1)"));
  }

  @Test
  void interruptedThreadEndsTheReader() {
    VehicleReader reader = drive.reader();
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
    VehicleReader reader = drive.reader();

    reader.close();
    reader.run();

    assertThat(adapter.openings).isZero();
    assertThat(recording.story()).containsExactly("Closed");
  }

  @Test
  void signalWithAHeaderThatIsNoneIsRefusedAtOnce() {
    for (String header : List.of("123", "7E8", "00DA18F1", "7E1\r04", "")) {
      drive.defined =
          List.of(new DefinedSignal(1, header, "wrong", 0, 8, false, 1, 0, "1", 0, 255));

      assertThatThrownBy(drive::reader)
          .hasMessageContaining("\"wrong\"")
          .hasMessageContaining("\"" + header + "\"");
    }
  }

  // Parameter 4F declares 640 kPa full scale: 100 * 640 / 255 = 251.0 (SAE J1699-3 cases for 4F).
  @Test
  void declaredFullScaleIsUsedForManifoldPressure() {
    vehicle.parameter("7E8", 0x0B, "64").parameter("7E8", 0x4F, "00000040");

    drive.go(5);

    assertThat(recording.of("01.0B"))
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.value()).isCloseTo(251.0, within(0.05)));
  }

  // A radio link may take its time to say that nobody is there.
  @Test
  void closingEndsAnOpeningThatBlocks() throws InterruptedException {
    CountDownLatch isOpening = new CountDownLatch(1);
    LinkSource blocking = new BlockingSource(adapter.clock, isOpening, new CountDownLatch(1));
    VehicleReader reader = new VehicleReader(blocking, drive.settings(Pace.POLITE), recording);
    Thread port = Thread.ofPlatform().daemon().start(reader);

    isOpening.await();
    reader.close();

    assertThat(port.join(Duration.ofSeconds(60))).isTrue();
    assertThat(recording.story()).containsExactly("Opening", "Closed");
  }

  private record BlockingSource(LinkClock clock, CountDownLatch isOpening, CountDownLatch never)
      implements LinkSource {
    @Override
    public String address() {
      return "blocking:port";
    }

    @Override
    public Link open() throws LinkException {
      isOpening.countDown();
      try {
        never.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      throw new LinkException(address(), "open", "it was interrupted", "Try again.", null);
    }
  }

  // Each control unit's full scale is its own: 7E9 declares 320 kPa, 7E8, which is believed, 640.
  @Test
  void fullScaleOfAnotherControlUnitIsNotUsed() {
    vehicle
        .parameter("7E8", 0x0B, "64")
        .parameter("7E8", 0x4F, "00000040")
        .parameter("7E9", 0x0B, "64")
        .parameter("7E9", 0x4F, "00000020");

    drive.go(5);

    assertThat(recording.of("01.0B"))
        .isNotEmpty()
        .allSatisfy(r -> assertThat(r.value()).isCloseTo(251.0, within(0.05)));
  }

  // A second control unit that declares a full scale says nothing about the first.
  @Test
  void controlUnitThatDeclaresNoFullScaleKeepsTheUsualOne() {
    vehicle.parameter("7E8", 0x0B, "64").parameter("7E9", 0x4F, "00000020");

    drive.go(5);

    assertThat(recording.of("01.0B")).isNotEmpty().allMatch(r -> r.value() == 100.0);
  }

  // Parameter 74 in tens would be 600 000 r/min: from then on it is counted in single turns.
  @Test
  void turboSpeedIsReadInSingleTurnsOnceTensCannotBe() {
    drive.wanted = Set.of("01.74.1", "01.0C");
    vehicle.parameter("7E8", 0x74, "0127100000");

    drive.go(
        20,
        now -> {
          if (now > 10) {
            vehicle.parameter("7E8", 0x74, now < 15 ? "01EA600000" : "0127100000");
          }
        });

    List<Reading> speeds = recording.of("01.74.1");
    assertThat(speeds.getFirst().value()).isEqualTo(100_000);
    assertThat(speeds).anyMatch(r -> r.value() == 60_000);
    assertThat(speeds.getLast().value()).isEqualTo(10_000);
  }

  // One bit on a noisy line makes "not here" of "busy", and no check byte tells.
  @Test
  void oneRefusalThatMayBeDamageDoesNotEndAParameter() {
    drive.wanted = Set.of("01.05");
    vehicle.parameter("7E8", 0x05, "82");

    drive.go(
        20,
        now -> {
          vehicle.fixed.clear();
          if (now > 5 && now < 6) {
            vehicle.fixed.put("7DF 0105", "7E8037F0131AAAAAAAA\r");
          }
        });

    assertThat(recording.of("01.05").getLast().nanoTime()).isGreaterThan(15_000_000_000L);
  }
}
