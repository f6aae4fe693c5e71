package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.road.Country;
import steadypull.road.PositionFix;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.RoadSight;
import steadypull.road.TourDrive;
import steadypull.road.grade.PassTrace;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;

/**
 * A route that lies: its heights bend the grade that is told and kept, and nothing of them is
 * learned, neither on the way nor afterwards.
 */
@Execution(ExecutionMode.CONCURRENT)
class NoEchoOfRoutesTest {
  private static final TourDrive DRIVE = TourDrive.of(Country.larkmoor().alongBrambleLane(), 1);

  @Test
  void whatARouteTellsIsInTheGradeAndInNothingThatIsLearned() {
    Driven own = drive(OptionalDouble.empty());
    Driven lied = drive(OptionalDouble.of(0.02));

    assertThat(lied.heights).isGreaterThan(20);
    assertThat(own.heights).isZero();
    assertThat(mean(lied.grades)).as("it lies by 2 %").isGreaterThan(mean(own.grades) + 0.3);
    assertThat(lied.pieces).isEqualTo(own.pieces).isNotEmpty();
    assertThat(learned(lied)).isEqualTo(learned(own)).isNotEmpty();
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(each -> each).average().orElseThrow();
  }

  /** As the library learns from a trip that it has kept. */
  private static List<RoadPass> learned(Driven driven) {
    PassTrace trace = new PassTrace(DRIVE.vehicle());
    driven.kept.forEach(trace::accept);
    return trace.finish();
  }

  private static final class Driven implements RoadSight, PipelineOutput {
    private final OptionalDouble lie;
    private final List<RoadPass> pieces = new ArrayList<>();
    private final List<Sample> kept = new ArrayList<>();
    private final List<Double> grades = new ArrayList<>();
    private int heights;
    private double metres;

    Driven(OptionalDouble lie) {
      this.lie = lie;
    }

    @Override
    public void fixed(PositionFix fix) {}

    @Override
    public void moved(double seconds, double driven) {
      metres += driven;
    }

    @Override
    public void driven(RoadPass piece) {
      pieces.add(piece);
    }

    @Override
    public boolean learnsOnTheWay() {
      return true;
    }

    /** The receiver's own altitude, and a slope that is not there. */
    @Override
    public OptionalDouble routeHeight(PositionFix fix) {
      return lie.isPresent() && fix.altitudeMetres().isPresent()
          ? OptionalDouble.of(fix.altitudeMetres().getAsDouble() + lie.getAsDouble() * metres)
          : OptionalDouble.empty();
    }

    @Override
    public RoadAhead ahead() {
      return new RoadAhead.Unknown();
    }

    @Override
    public void entry(TripEntry entry) {
      switch (entry) {
        case TripEntry.OfSample(Sample sample) -> {
          kept.add(sample);
          if (sample.channel().equals(Channels.ROAD_GRADE)) {
            grades.add(sample.value());
          }
        }
        case TripEntry.OfEvent(TripEvent event) ->
            heights += RoadNews.routeHeight(event).isPresent() ? 1 : 0;
      }
    }
  }

  private static Driven drive(OptionalDouble lie) {
    Driven driven = new Driven(lie);
    DrivePipeline pipeline =
        new DrivePipeline(
            DemoDrives.ENGLISH.setup(DRIVE.vehicle(), true),
            DemoDrives.START,
            Optional.of(driven),
            driven);
    DRIVE.samples().forEach(sample -> pipeline.accept(new TripEntry.OfSample(sample)));
    return driven;
  }
}
