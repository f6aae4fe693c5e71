package steadypull.adapter;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import steadypull.adapter.diagnostic.DefinedSignal;

/**
 * Guided fuzzing of what a reader is told to read, headers included, a minute under {@code -Psoak};
 * judged by {@link WireOracle}.
 */
@Tag("soak")
class ReaderSettingsFuzzTest {

  @FuzzTest(maxDuration = "60s")
  void whateverAReaderIsToldToRead(FuzzedDataProvider data) {
    HostileAdapter adapter =
        new HostileAdapter(
            new ScriptedDrive().adapter,
            new Random(data.consumeInt()),
            data.consumeProbabilityDouble(),
            200);
    try {
      ReaderSettings settings =
          new ReaderSettings(
              wanted(data), List.of(signal(data)), data.pickValue(ReaderSettings.Pace.values()));
      VehicleReader reader = new VehicleReader(adapter, settings, new Recording());
      adapter.onEnough = reader::close;
      reader.run();
    } catch (IllegalArgumentException refusedInWords) {
      if (!adapter.written.isEmpty()) {
        throw new AssertionError("Refused after something was sent", refusedInWords);
      }
    }
    WireOracle.requireOnlyReading(adapter.written);
  }

  private static Set<String> wanted(FuzzedDataProvider data) {
    Set<String> wanted = new HashSet<>();
    for (int i = 0; i < 4; i++) {
      wanted.add(data.consumeAsciiString(8));
    }
    return wanted;
  }

  private static DefinedSignal signal(FuzzedDataProvider data) {
    return new DefinedSignal(
        data.consumeInt(0, 0xFFFF),
        data.consumeString(10),
        data.consumeString(10),
        data.consumeInt(0, 255),
        data.consumeInt(1, 32),
        data.consumeBoolean(),
        1,
        0,
        "degC",
        -1e9,
        1e9);
  }
}
