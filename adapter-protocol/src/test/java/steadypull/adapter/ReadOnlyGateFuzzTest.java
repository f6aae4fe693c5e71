package steadypull.adapter;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.ReadOnlyGate;
import steadypull.adapter.link.RefusedRequestException;

/** Guided fuzzing of the gate, a minute under {@code -Psoak}; judged by {@link WireOracle}. */
@Tag("soak")
class ReadOnlyGateFuzzTest {

  @FuzzTest(maxDuration = "60s")
  void whateverIsWrittenToTheGate(FuzzedDataProvider data) throws LinkException {
    Wire wire = new Wire();
    ReadOnlyGate gate = ReadOnlyGate.before(wire);
    while (data.remainingBytes() > 0) {
      int sent = wire.written.size();
      try {
        gate.write(data.consumeBytes(24));
      } catch (RefusedRequestException refused) {
        requireNothingSent(refused, wire, sent);
      }
    }
    WireOracle.requireOnlyReading(wire.written);
  }

  private static void requireNothingSent(RefusedRequestException refused, Wire wire, int before) {
    if (wire.written.size() != before) {
      throw new AssertionError("Refused, and sent all the same", refused);
    }
  }

  /** Keeps what reaches it, and never answers. */
  private static final class Wire implements Link {
    final List<byte[]> written = new ArrayList<>();

    @Override
    public String address() {
      return "wire";
    }

    @Override
    public void write(byte[] bytes) {
      written.add(bytes.clone());
    }

    @Override
    public byte[] read(Duration patience) {
      return new byte[0];
    }

    @Override
    public void close() {}
  }
}
