package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import steadypull.adapter.diagnostic.CodeStatus;
import steadypull.adapter.diagnostic.FreezeFrame;
import steadypull.adapter.diagnostic.SignalValue;
import steadypull.adapter.diagnostic.TroubleCode;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.adapter.diagnostic.TroubleCodeReport.Found;

/** Stories of drives on which control units are asked for more than parameters. */
class TroubleCodesOnTheWayTest {
  private static final TroubleCode UNDERBOOST = new TroubleCode("P0299");

  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  TroubleCodesOnTheWayTest() {
    answer("03", "7E8", "4300");
    answer("07", "7E8", "4700");
    answer("0A", "7E8", "4A00");
  }

  private void answer(String request, String unit, String payload) {
    vehicle.fixed.put("7DF " + request, String.join("", ScriptedVehicle.frames(unit, payload)));
  }

  @Test
  void codesAreAskedForAtTheStartEveryMinuteAndAtTheEnd() {
    drive.go(150);

    assertThat(times("03")).hasSize(4);
    double start = times("03").getFirst();
    assertThat(start).as("soon after the lengths were learnt").isLessThan(8);
    assertThat(times("03").get(1)).isCloseTo(start + 60, within(0.5));
    assertThat(times("03").get(2)).isCloseTo(start + 120, within(0.5));
    assertThat(times("07")).hasSize(4);
    assertThat(times("0A")).as("at the start and at the end").hasSize(2);
    assertThat(recording.reports).hasSize(4);
    assertThat(recording.reports.getFirst().answeredBy()).containsOnlyKeys(CodeStatus.values());
    assertThat(recording.reports.getFirst().found()).isEmpty();
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  @Test
  void codeThatComesUpOnTheWayIsToldWithinAMinute() {
    drive.go(100, now -> answer("03", "7E8", now < 30 ? "4300" : "43010299"));

    int told = firstReportWith(UNDERBOOST);
    assertThat(recording.reports.get(told).isStored("7E8", UNDERBOOST)).isTrue();
    assertThat(recording.reportedAtSeconds.get(told)).isBetween(30.0, 91.0);
    assertThat(recording.reports.getFirst().found()).isEmpty();
  }

  // ISO 15031-5: several control units may answer; each one's codes are its own.
  @Test
  void controlUnitsAreKeptApart() {
    vehicle.fixed.put(
        "7DF 03",
        String.join("", ScriptedVehicle.frames("7E8", "4303029900870088"))
            + String.join("", ScriptedVehicle.frames("7E9", "43010218")));

    drive.go(10);

    assertThat(recording.reports.getFirst().found())
        .containsExactly(
            found("7E8", "P0299"),
            found("7E8", "P0087"),
            found("7E8", "P0088"),
            found("7E9", "P0218"));
    assertThat(recording.reports.getFirst().answeredBy().get(CodeStatus.STORED))
        .containsExactlyInAnyOrder("7E8", "7E9");
    assertThat(recording.reports.getFirst().answeredBy().get(CodeStatus.PENDING))
        .containsExactly("7E8");
  }

  @Test
  void vehicleThatAnswersNoneOfThisIsReadAllTheSame() {
    vehicle.fixed.clear();

    drive.go(130);

    assertThat(recording.reports).isEmpty();
    assertThat(recording.of("01.0C").size()).isGreaterThan(400);
    assertThat(recording.story()).containsExactly("Opening", "Searching", "Connected", "Closed");
  }

  @Test
  void refusalIsNoReportOfNoCodes() {
    answer("03", "7E8", "7F0311");

    drive.go(10);

    assertThat(recording.reports.getFirst().answeredBy())
        .containsOnlyKeys(CodeStatus.PENDING, CodeStatus.PERMANENT);
  }

  @Test
  void questionsLeaveRoomForPolls() {
    drive.go(60);

    // 0.25 s class over about 57 s: as many as without any questions, but for a few.
    assertThat(recording.of("01.0C").size()).isGreaterThan(200);
    List<String> sent = adapter.sent;
    int first = sent.indexOf("03");
    int next = sent.indexOf("07");
    assertThat(sent.subList(first + 1, next)).anyMatch(line -> line.startsWith("01"));
  }

  // SAE J1979 service 02: 42, parameter, frame; the map of frame 0 says what it holds.
  @Test
  void freezeFrameOfAStoredCodeIsReadOnce() {
    answer("03", "7E8", "43010299");
    answer("020200", "7E8", "4202000299");
    answer("020000", "7E8", "42000048180001"); // 02, 05, 0C, 0D and the next map
    answer("022000", "7E8", "42200000000001"); // only the next map
    answer("024000", "7E8", "42400004000000"); // 46
    answer("020500", "7E8", "42050080");
    answer("020C00", "7E8", "420C001F40");
    answer("020D00", "7E8", "420D0050");
    answer("024600", "7E8", "4246004B");

    drive.go(140);

    assertThat(recording.frames).hasSize(1);
    FreezeFrame frame = recording.frames.getFirst();
    assertThat(frame.controlUnit()).isEqualTo("7E8");
    assertThat(frame.code()).isEqualTo(UNDERBOOST);
    // 0x80 - 40 = 88 degC, 0x1F40 / 4 = 2000 r/min, 0x50 = 80 km/h, 0x4B - 40 = 35 degC.
    assertThat(values(frame))
        .isEqualTo(Map.of("01.05", 88.0, "01.0C", 2000.0, "01.0D", 80.0, "01.46", 35.0));
    assertThat(times("020200")).hasSize(1);
  }

  @Test
  void frameWithoutMapsIsAskedForWhatTheControlUnitTellsAtPresent() {
    answer("03", "7E8", "43010299");
    answer("020200", "7E8", "4202000299");
    answer("020500", "7E8", "42050080");

    drive.go(30);

    assertThat(values(recording.frames.getFirst())).isEqualTo(Map.of("01.05", 88.0));
    assertThat(times("025C00")).as("not supported at present").isEmpty();
  }

  @Test
  void codeWithoutAFrameIsToldWithoutOne() {
    answer("03", "7E8", "43010299");
    answer("020200", "7E8", "4202000000");

    drive.go(20);

    assertThat(recording.reports.getFirst().found()).containsExactly(found("7E8", "P0299"));
    assertThat(recording.frames).isEmpty();
    assertThat(adapter.sent).noneMatch(line -> line.equals("020000"));
  }

  // Service 09 item 0A: twenty characters; 04: sixteen; 06: four bytes.
  @Test
  void controlUnitsSayOnceWhatTheyAre() {
    answer("090A", "7E8", "490A01" + "45434D002D456E67696E65436F6E74726F6C0000");
    answer("0904", "7E8", "490401" + "4341312D303030370000000000000000");
    answer("0906", "7E8", "4906011234ABCD");

    drive.go(130);

    assertThat(recording.identities).hasSize(1);
    assertThat(recording.identities.getFirst().name()).isEqualTo("ECM -EngineControl");
    assertThat(recording.identities.getFirst().calibrations()).containsExactly("CA1-0007");
    assertThat(recording.identities.getFirst().verificationNumbers()).containsExactly("1234ABCD");
    assertThat(times("0904")).hasSize(1);
  }

  @Test
  void codesThatAppearedInTheLastMinuteAreToldAtTheEnd() {
    drive.go(40, now -> answer("03", "7E8", now < 35 ? "4300" : "43010299"));

    assertThat(recording.reports.getLast().isStored("7E8", UNDERBOOST)).isTrue();
    assertThat(recording.story()).endsWith("Connected", "Closed");
  }

  // Nothing that happens at the end may keep anybody waiting.
  @Test
  void adapterThatIsMuteAtTheEndDelaysItByASecondAndAHalfAtMost() {
    double[] end = {0};
    drive.go(
        40,
        now -> {
          if (now > 39) {
            adapter.isMute = true;
            end[0] = now;
          }
        });

    assertThat(adapter.clock.seconds() - end[0]).isLessThan(2.7);
  }

  private List<Double> times(String request) {
    return IntStream.range(0, adapter.sent.size())
        .filter(i -> adapter.sent.get(i).equals(request))
        .mapToObj(adapter.sentAtSeconds::get)
        .toList();
  }

  private int firstReportWith(TroubleCode code) {
    for (int i = 0; i < recording.reports.size(); i++) {
      TroubleCodeReport report = recording.reports.get(i);
      if (report.found().stream().anyMatch(each -> each.code().equals(code))) {
        return i;
      }
    }
    throw new AssertionError(code + " was never told: " + recording.reports);
  }

  private static Found found(String unit, String code) {
    return new Found(unit, new TroubleCode(code), CodeStatus.STORED);
  }

  private static Map<String, Double> values(FreezeFrame frame) {
    return frame.values().stream()
        .collect(Collectors.toMap(value -> value.signal().key(), SignalValue::value));
  }
}
