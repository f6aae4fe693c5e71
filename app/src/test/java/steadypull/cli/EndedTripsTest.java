package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import steadypull.drive.EndedTrip;
import steadypull.drive.PipelineOutput;

class EndedTripsTest {
  private final StringWriter results = new StringWriter();
  private final List<String> passedOn = new ArrayList<>();
  private final EndedTrips trips =
      new EndedTrips(new PrintWriter(results), new PrintWriter(new StringWriter()), next());

  private PipelineOutput next() {
    return (PipelineOutput)
        Proxy.newProxyInstance(
            PipelineOutput.class.getClassLoader(),
            new Class<?>[] {PipelineOutput.class},
            (proxy, method, arguments) -> {
              passedOn.add(method.getName());
              return null;
            });
  }

  // Every method of an output has an empty body of its own: whoever stands between forgets easily.
  @Test
  void everythingButEndedTripsIsPassedOn() throws ReflectiveOperationException {
    List<Method> others =
        Arrays.stream(PipelineOutput.class.getMethods())
            .filter(method -> !method.getName().equals("tripEnded"))
            .toList();

    for (Method method : others) {
      method.invoke(trips, nothing(method));
    }

    assertThat(passedOn)
        .hasSizeGreaterThan(5)
        .isEqualTo(others.stream().map(Method::getName).toList());
  }

  private static @Nullable Object[] nothing(Method method) {
    return Arrays.stream(method.getParameterTypes())
        .map(type -> type == long.class ? (Object) 0L : null)
        .toArray();
  }

  @Test
  void endedTripIsPrintedAlone() {
    trips.tripEnded(new EndedTrip("20300101T000000Z-abcd", EndedTrip.Cause.ENGINE_OFF));

    assertThat(results.toString()).isEqualToIgnoringNewLines("20300101T000000Z-abcd");
    assertThat(passedOn).isEmpty();
  }
}
