package steadypull.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import steadypull.channel.QuantityFormat;
import steadypull.exchange.TableException;
import steadypull.road.memory.RouteLine;

/** A route that drives follow, as an option that several commands share. */
final class RouteOption {
  @Option(
      names = "--route",
      paramLabel = "FILE",
      description =
          "A route or track (GPX) that tells the road ahead while "
              + "the vehicle is on it; needs --receiver. It is not kept.")
  private @Nullable Path file;

  /**
   * Reads the route, if one was given; nothing but its file is touched.
   *
   * @param hasReceiver whether positions will be told
   * @param notes takes what is to be said of it
   */
  Optional<RouteLine> read(
      CommandLine command, boolean hasReceiver, QuantityFormat format, PrintWriter notes)
      throws TableException, CommandFailure {
    Path given = file;
    if (given == null) {
      return Optional.empty();
    }
    if (!hasReceiver) {
      throw new Misuse(
          command,
          "--receiver beside --route",
          "--route alone",
          "Name the satellite receiver: a route counts while the vehicle is on it");
    }
    return Optional.of(FollowedRoute.read(given, format, notes));
  }
}
