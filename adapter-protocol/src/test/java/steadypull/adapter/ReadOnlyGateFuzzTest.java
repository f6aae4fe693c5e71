package steadypull.adapter;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.ReadOnlyGate;
import steadypull.adapter.link.RefusedRequestException;

/**
 * Guided fuzzing of the gate and of a reader's configuration; runs for minutes under {@code
 * -Psoak}. Judged by {@link WireOracle}.
 */
@Tag("soak")
class ReadOnlyGateFuzzTest {

  @FuzzTest(maxDuration = "60s")
  void whateverIsWrittenToTheGate(FuzzedDataProvider data) throws LinkException {
    HostileAdapter adapter =
        new HostileAdapter(new ScriptedDrive().adapter, new Random(1), 0, Integer.MAX_VALUE);
    ReadOnlyGate gate = ReadOnlyGate.before(adapter.open());
    while (data.remainingBytes() > 0) {
      int sent = adapter.written.size();
      try {
        gate.write(data.consumeBytes(24));
      } catch (RefusedRequestException refused) {
        requireNothingSent(refused, adapter, sent);
      }
    }
    requireReading(adapter);
  }

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
    requireReading(adapter);
  }

  private static void requireNothingSent(
      RefusedRequestException refused, HostileAdapter adapter, int before) {
    if (adapter.written.size() != before) {
      throw new AssertionError("Refused, and sent all the same", refused);
    }
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

  private static void requireReading(HostileAdapter adapter) {
    for (byte[] line : adapter.written) {
      Optional<String> fault = WireOracle.fault(line);
      if (fault.isPresent()) {
        throw new AssertionError("Something on the wire " + fault.get());
      }
    }
  }
}
