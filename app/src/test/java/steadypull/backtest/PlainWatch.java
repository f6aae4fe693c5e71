package steadypull.backtest;

import java.util.ArrayList;
import java.util.List;
import steadypull.review.Warning;
import steadypull.vehicle.Limit;

/** What simpler forecasters would have said of a drive. Each channel by itself. */
enum PlainWatch {
  /** Within 5 K of the limit. */
  THRESHOLD {
    @Override
    boolean warns(double[] celsius, int second, double limit) {
      return celsius[second] >= limit - 5;
    }
  },
  /** A straight line through the last 30 s reaches the limit within 120 s. */
  LINE_OF_30_SECONDS {
    @Override
    boolean warns(double[] celsius, int second, double limit) {
      return meets(celsius, second, limit, 30);
    }
  },
  /** The same through the last 60 s. */
  LINE_OF_60_SECONDS {
    @Override
    boolean warns(double[] celsius, int second, double limit) {
      return meets(celsius, second, limit, 60);
    }
  };

  private static final int AHEAD_SECONDS = 120;

  abstract boolean warns(double[] celsius, int second, double limit);

  /** What it would have raised. */
  List<Warning> raised(WorldDrive drive) {
    List<Warning> raised = new ArrayList<>();
    for (Limit limit : drive.world().vehicle().limits().values()) {
      double[] celsius = drive.celsius().get(limit.channel());
      if (celsius != null) {
        Delays.watch(
            limit.channel(),
            limit.celsius(),
            drive.seconds(),
            (second, _) -> warns(celsius, second, limit.celsius()),
            raised);
      }
    }
    return raised;
  }

  /** Least squares over the last seconds. */
  private static boolean meets(double[] celsius, int second, double limit, int span) {
    double middle = (span - 1) / 2.0;
    double mean = 0;
    double slope = 0;
    double squares = 0;
    for (int i = 0; i < span; i++) {
      double value = celsius[second - span + 1 + i];
      mean += value / span;
      slope += (i - middle) * value;
      squares += (i - middle) * (i - middle);
    }
    return celsius[second] >= limit || mean + slope / squares * (middle + AHEAD_SECONDS) >= limit;
  }
}
