package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.demo.DemoWorld;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/** Whatever a vehicle file says, headers and identifiers included, the vehicle is only read. */
class VehicleFileOnTheWireTest {
  /**
   * Said without the gate, as an adapter sees it, which ignores case: services 01 02 03 07 09 0A
   * 22, or a command that asks for none.
   */
  private static final Pattern READS =
      Pattern.compile(
          "((01|02|09|22)[0-9A-F]{2,13}|(03|07|0A)[0-9A-F]?"
              + "|ATSH(7DF|[67][0-9A-F]{2}|DB33F1|DA[0-9A-F]{2}F1)"
              + "|AT(Z|WS|I|E0|L0|S0|H1|CAF1|AT1|M0|DPN?|RV|PC|TP0|TPA[1-9]|ST[0-9A-F]{2}))\r|\r",
          Pattern.CASE_INSENSITIVE);

  private static final String[] HEADERS = {
    "7E1",
    "7e1",
    "7DF",
    "18DA18F1",
    "18DB33F1",
    "DA18F1",
    "7E8",
    "18DAF118",
    "04",
    "0",
    "FFFFFFFF",
    "7E1\\r04",
    "7E1 ",
    "14FF",
    "",
    "686AF1",
    "7E1\\u000d04"
  };
  private static final String[] IDENTIFIERS = {
    "1E1C", "F190", "FFFF", "0000", "1E1C04", "0x1E", "", "-1", "1E1C\\r04", "1E1C 14"
  };
  private static final int LINES = 60;

  @Test
  void onlyReadingReachesTheWire() throws Exception {
    String file = DemoWorld.vehicleFile(DemoWorld.scenario("cool-day").orElseThrow());
    assertThat(file).contains("\"7E1\"", "\"1E1C\"");
    long seed = 3_779;
    Random random = new Random(seed);
    int ran = 0;
    int refused = 0;
    for (int round = 0; round < 120; round++) {
      Wire wire = new Wire();
      try {
        read(mutated(file, random), wire);
        ran++;
      } catch (VehicleFileException | IllegalArgumentException refusedInWords) {
        assertThat(wire.lines).as("seed %d, round %d", seed, round).isEmpty();
        refused++;
      }
      assertThat(wire.lines)
          .as("seed %d, round %d", seed, round)
          .allMatch(line -> READS.matcher(line).matches());
    }
    assertThat(ran).as("seed %d: files that were read and driven with", seed).isGreaterThan(20);
    assertThat(refused).as("seed %d: files that were refused", seed).isGreaterThan(20);
  }

  private static void read(String file, Wire wire) throws VehicleFileException {
    DriveRoute route =
        new DriveRoute(
            wire,
            DemoDrives.ENGLISH.setup(VehicleJson.read(file, "mutated"), true),
            ReaderSettings.Pace.FULL,
            DriveEnd.never(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    VehicleReader reader = new VehicleReader(wire, route.readerSettings(), new Deaf());
    wire.onEnough = reader::close;
    reader.run();
  }

  private static String mutated(String file, Random random) {
    String mutated =
        file.replace("\"7E1\"", "\"" + HEADERS[random.nextInt(HEADERS.length)] + "\"")
            .replace("\"1E1C\"", "\"" + IDENTIFIERS[random.nextInt(3 + random.nextInt(8))] + "\"");
    if (random.nextInt(4) > 0) {
      return mutated;
    }
    int at = random.nextInt(mutated.length());
    return mutated.substring(0, at) + (char) (32 + random.nextInt(95)) + mutated.substring(at + 1);
  }

  /** The bench, with a record of every write. */
  private static final class Wire implements LinkSource {
    final List<String> lines = new ArrayList<>();
    Runnable onEnough = () -> {};
    private final LinkSource bench;

    Wire() throws LinkException {
      bench = DemoWorld.links().find("demo:cool-day?speed=max").orElseThrow();
    }

    @Override
    public String address() {
      return bench.address();
    }

    @Override
    public LinkClock clock() {
      return bench.clock();
    }

    @Override
    public Link open() throws LinkException {
      Link link = bench.open();
      return new Link() {
        @Override
        public String address() {
          return link.address();
        }

        @Override
        public void write(byte[] bytes) throws LinkException {
          lines.add(new String(bytes, StandardCharsets.ISO_8859_1));
          if (lines.size() >= LINES) {
            onEnough.run();
          }
          link.write(bytes);
        }

        @Override
        public byte[] read(Duration patience) throws LinkException {
          return link.read(patience);
        }

        @Override
        public void close() {
          link.close();
        }
      };
    }
  }

  private static final class Deaf implements ReaderListener {
    @Override
    public void reading(Reading reading) {}

    @Override
    public void linkState(LinkState state, long nanoTime) {}
  }
}
