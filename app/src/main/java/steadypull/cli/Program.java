package steadypull.cli;

import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import steadypull.drive.LinkOffer;
import steadypull.tablet.Tablet;

/**
 * What the commands get from outside: the only way in which they learn of the machine. Immutable.
 *
 * @param offers kinds of links that the program brings along
 * @param demo the built-in demo world
 * @param environment environment variables
 * @param homeFolder the user's home
 * @param operatingSystem as in the system property {@code os.name}
 * @param wall the wall's clock
 * @param tablet the machine that records
 * @param version version of the program
 */
public record Program(
    List<LinkOffer> offers,
    DemoDesk demo,
    Map<String, String> environment,
    String homeFolder,
    String operatingSystem,
    InstantSource wall,
    Tablet tablet,
    String version) {
  public Program {
    offers = List.copyOf(offers);
    environment = Map.copyOf(environment);
    Objects.requireNonNull(demo);
    Objects.requireNonNull(wall);
    Objects.requireNonNull(tablet);
  }
}
