package steadypull.demo.bench;

import java.io.ByteArrayOutputStream;
import java.util.OptionalLong;
import java.util.Random;

/** The serial line to an adapter: what passes it may be lost, wrong or without meaning. */
final class TroubledLine implements BenchAdapter {
  private static final int NUL_ONE_IN = 5;
  private static final int FLIP_ONE_IN = 60;
  private static final double NANOS = 1e9;

  private final BenchAdapter adapter;
  private final BenchSettings settings;
  private final Outlet babble;
  private final Random chance;

  TroubledLine(BenchAdapter adapter, BenchSettings settings) {
    this.adapter = adapter;
    this.settings = settings;
    babble = new Outlet(settings.adapter().characterNanos());
    chance = new Random(settings.seed() ^ 0xBADL);
  }

  @Override
  public void hear(byte character, long nanos) {
    if (has(Fault.Kind.SILENT, nanos)) {
      return;
    }
    if (has(Fault.Kind.NONSENSE, nanos)) {
      sayAnything(nanos);
    } else {
      adapter.hear(character, nanos);
    }
  }

  private void sayAnything(long nanos) {
    StringBuilder text = new StringBuilder();
    for (int i = chance.nextInt(12); i >= 0; i--) {
      text.append((char) chance.nextInt(256));
    }
    babble.print(text.toString(), nanos);
  }

  @Override
  public byte[] take(long nanos) {
    byte[] said = adapter.take(nanos);
    ByteArrayOutputStream came = new ByteArrayOutputStream();
    if (!has(Fault.Kind.SILENT, nanos)) {
      for (byte one : said) {
        pass(one, nanos, came);
      }
    }
    came.writeBytes(babble.take(nanos));
    return came.toByteArray();
  }

  private void pass(byte one, long nanos, ByteArrayOutputStream came) {
    if (has(Fault.Kind.NULS, nanos) && chance.nextInt(NUL_ONE_IN) == 0) {
      came.write(0);
    }
    boolean isFlipped = has(Fault.Kind.FLIPPED_BITS, nanos) && chance.nextInt(FLIP_ONE_IN) == 0;
    came.write(isFlipped ? one ^ (1 << chance.nextInt(8)) : one);
  }

  @Override
  public OptionalLong nextNanos() {
    return Moments.earlier(adapter.nextNanos(), babble.nextNanos());
  }

  private boolean has(Fault.Kind kind, long nanos) {
    return settings.has(kind, nanos / NANOS);
  }
}
