package steadypull.adapter;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/**
 * An adapter that answers well most of the time and otherwise says anything at all, hangs or goes
 * away. Keeps every write as it reached the wire. Used by one thread.
 */
final class HostileAdapter implements LinkSource {
  private static final String[] TEXTS = {
    "?\r\r>",
    "OK\r\r>",
    "NO DATA\r\r>",
    "STOPPED\r\r>",
    "LV RESET\r\r>",
    "BUFFER FULL\r\r>",
    "SEARCHING...",
    "CAN ERROR\r\r>",
    "UNABLE TO CONNECT\r\r>",
    "04\r44\r\r>",
    ">",
    "\r",
    "ATZ\r>",
    "7E8037F0178\r",
    "7E803440000\r\r>",
    "t7E8803410C1F40AAAAAA\r",
    "\u0007",
    "ACT ALERT\r"
  };

  final ScriptedAdapter behind;
  final List<byte[]> written = new ArrayList<>();
  private final Random random;
  private final double hostility;
  private final int mostUses;
  Runnable onEnough = () -> {};
  private int uses;

  /**
   * Makes an adapter.
   *
   * @param hostility share of reads that are not what they should be, 0 to 1
   * @param mostUses reads, writes and openings after which enough was heard
   */
  HostileAdapter(ScriptedAdapter behind, Random random, double hostility, int mostUses) {
    this.behind = behind;
    this.random = random;
    this.hostility = hostility;
    this.mostUses = mostUses;
  }

  @Override
  public String address() {
    return "hostile:port";
  }

  @Override
  public LinkClock clock() {
    return behind.clock;
  }

  @Override
  public Link open() throws LinkException {
    use();
    if (random.nextDouble() < hostility / 4) {
      throw gone();
    }
    return new Opened(behind.open());
  }

  private void use() {
    uses++;
    if (uses >= mostUses) {
      onEnough.run();
    }
  }

  private LinkException gone() {
    return new LinkException(
        address(), "read from", "the device has gone", "Plug it in.", /* cause= */ null);
  }

  private final class Opened implements Link {
    private final Link link;

    Opened(Link link) {
      this.link = link;
    }

    @Override
    public String address() {
      return HostileAdapter.this.address();
    }

    @Override
    public void write(byte[] bytes) throws LinkException {
      use();
      written.add(bytes.clone());
      link.write(bytes);
    }

    @Override
    public byte[] read(Duration patience) throws LinkException {
      use();
      byte[] came = link.read(patience);
      if (random.nextDouble() >= hostility) {
        return came;
      }
      return switch (random.nextInt(6)) {
        case 0 -> noise();
        case 1, 2 -> TEXTS[random.nextInt(TEXTS.length)].getBytes(StandardCharsets.ISO_8859_1);
        case 3 -> damaged(came);
        case 4 -> new byte[0];
        default -> {
          if (random.nextInt(20) == 0) {
            throw gone();
          }
          yield came;
        }
      };
    }

    private byte[] noise() {
      byte[] noise = new byte[random.nextInt(40)];
      random.nextBytes(noise);
      return noise;
    }

    private byte[] damaged(byte[] came) {
      byte[] damaged = came.clone();
      if (damaged.length > 0) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      }
      return damaged;
    }

    @Override
    public void close() {
      link.close();
    }
  }
}
