package steadypull.compare;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import steadypull.channel.QuantityFormat;

/** Says what to do now, in the reader's language and units. Immutable. */
public final class PullWords {
  static final String BUNDLE = "steadypull.compare.PullWords";

  private final ResourceBundle bundle;
  private final RunWords names;
  private final Locale locale;
  private final QuantityFormat quantities;

  /** Words for one reader. */
  public PullWords(Locale locale, QuantityFormat quantities) {
    bundle = RunWords.bundle(BUNDLE, locale);
    names = new RunWords(locale);
    this.locale = locale;
    this.quantities = quantities;
  }

  /** What to do now, a sentence or two. */
  public String say(PullStep step) {
    return switch (step) {
      case PullStep.WarmUp(OptionalDouble coolant) ->
          coolant.isPresent()
              ? say("warm-up", quantities.temperature(coolant.getAsDouble()))
              : say("warm-up.silent");
      case PullStep.Cool cool ->
          fault(cool.lastFault())
              + say(
                  "cool",
                  names.name(cool.channel()),
                  quantities.temperatureDifference(cool.kelvin()));
      case PullStep.Warm warm ->
          say("warm", names.name(warm.channel()), quantities.temperatureDifference(warm.kelvin()));
      case PullStep.Silent silent -> say("silent", names.name(silent.channel()));
      case PullStep.Pull pull -> fault(pull.lastFault()) + pull(pull);
      case PullStep.Hold hold -> hold(hold);
      case PullStep.EaseOff(PullStep.Place place) -> say("ease-off", place.number(), place.of());
      case PullStep.Change(Side next) -> say(next == Side.AFTER ? "change.after" : "change.before");
      case PullStep.Done(int pulls) -> say("done", pulls);
    };
  }

  private String pull(PullStep.Pull pull) {
    PullStep.Place place = pull.place();
    return pull.kilowatts().isPresent()
        ? say("pull", place.number(), place.of(), power(pull.kilowatts().getAsDouble()))
        : say("pull.first");
  }

  private String hold(PullStep.Hold hold) {
    return hold.wishedKilowatts().isPresent()
        ? say(
            "hold",
            hold.secondsLeft(),
            power(hold.kilowatts()),
            power(hold.wishedKilowatts().getAsDouble()))
        : say("hold.first", hold.secondsLeft(), power(hold.kilowatts()));
  }

  private String fault(Optional<PullFault> fault) {
    return fault.isEmpty()
        ? ""
        : switch (fault.get()) {
          case PullFault.TooShort(int seconds, int wished) ->
              say("fault.short", seconds, wished) + " ";
          case PullFault.OtherLoad(double kilowatts, double wished) ->
              say("fault.load", power(kilowatts), power(wished)) + " ";
        };
  }

  private String power(double kilowatts) {
    return quantities.powerDigits(kilowatts) + " " + quantities.powerUnit();
  }

  private String say(String key, Object... arguments) {
    return new MessageFormat(bundle.getString(key), locale).format(arguments);
  }
}
