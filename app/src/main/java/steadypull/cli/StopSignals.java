package steadypull.cli;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lets somebody end a running command with Ctrl-C (or its like) so that the command finishes its
 * work and exits as done. A second Ctrl-C ends the program at once. Where signals cannot be heard,
 * nothing changes: the program ends as Java programs do.
 *
 * <p>Java has no public interface for signals but {@code sun.misc.Signal} of the supported module
 * {@code jdk.unsupported}; the compiler warns of it without a way to say that it is wanted, hence
 * the reflection.
 */
final class StopSignals implements AutoCloseable {
  /** Ctrl-C, a polite request to end, and a closed terminal (POSIX signal names). */
  private static final List<String> NAMES = List.of("INT", "TERM", "HUP");

  private record Taken(Object signal, Object before) {}

  private final Runnable stop;
  private final List<Taken> taken = new ArrayList<>();

  private StopSignals(Runnable stop) {
    this.stop = stop;
  }

  /**
   * Takes the signals until it is closed.
   *
   * @param stop called once on a thread of its own; asks the command to finish
   */
  static StopSignals call(Runnable stop) {
    StopSignals signals = new StopSignals(stop);
    NAMES.forEach(signals::take);
    return signals;
  }

  private void take(String name) {
    try {
      Object signal = signalClass().getConstructor(String.class).newInstance(name);
      Object before = handle(signal, handler());
      taken.add(new Taken(signal, before));
      if (name.equals("HUP") && before.equals(standard("SIG_IGN"))) {
        handle(signal, before);
      }
    } catch (ReflectiveOperationException unknownHere) {
      // A system without that signal, or a Java without the module: see the class comment.
    }
  }

  private Object handler() throws ClassNotFoundException {
    Class<?> type = Class.forName("sun.misc.SignalHandler");
    return Proxy.newProxyInstance(type.getClassLoader(), new Class<?>[] {type}, new Stopping());
  }

  private static Object handle(Object signal, Object handler) throws ReflectiveOperationException {
    Class<?> type = Class.forName("sun.misc.SignalHandler");
    return signalClass().getMethod("handle", signalClass(), type).invoke(null, signal, handler);
  }

  private static Object standard(String name) throws ReflectiveOperationException {
    return Class.forName("sun.misc.SignalHandler").getField(name).get(null);
  }

  private static Class<?> signalClass() throws ClassNotFoundException {
    return Class.forName("sun.misc.Signal");
  }

  @Override
  public void close() {
    for (Taken each : taken) {
      try {
        handle(each.signal(), each.before());
      } catch (ReflectiveOperationException unknownHere) {
        throw new IllegalStateException("A signal that was taken can be given back", unknownHere);
      }
    }
  }

  /** Hears the first signal; the next ones end the program at once. */
  private final class Stopping implements InvocationHandler {
    @Override
    public @Nullable Object invoke(Object proxy, Method method, Object @Nullable [] arguments)
        throws ReflectiveOperationException {
      return switch (method.getName()) {
        case "handle" -> {
          for (Taken each : taken) {
            handle(each.signal(), standard("SIG_DFL"));
          }
          stop.run();
          yield null;
        }
        case "equals" -> arguments != null && isOurs(arguments[0]);
        case "hashCode" -> hashCode();
        default -> "stop";
      };
    }

    private boolean isOurs(Object other) {
      return Proxy.isProxyClass(other.getClass()) && equals(Proxy.getInvocationHandler(other));
    }
  }
}
