package steadypull.advice;

import java.util.List;
import java.util.Optional;
import steadypull.channel.Channel;

/**
 * One rule, checked and compiled. Immutable.
 *
 * @param id its id; {@code {channel}} stands for the watched channel's plain word
 * @param watch channels judged one by one; empty for a rule about the whole vehicle
 * @param raisesWhen must hold for the on-delay
 * @param staysWhile must fail for the off-delay before the rule lets go
 * @param suppressedWhile does not apply meanwhile, by design; empty if it always applies
 * @param level how urgent
 * @param onDelaySeconds 0 to 600
 * @param offDelaySeconds 0 to 600
 * @param deadbandKelvin 0 to 50; how much cooler a raised channel must be than the condition says
 * @param onceSeconds 0 to 600; said once a trip and for so long, 0 is as often and as long as it
 *     holds
 * @param priority 1 to 9, 1 goes first within a level
 * @param advise what it asks
 * @param why one sentence for people
 * @param text as the file has it
 */
record Rule(
    String id,
    List<Channel> watch,
    Condition raisesWhen,
    Condition staysWhile,
    Optional<Condition> suppressedWhile,
    Level level,
    double onDelaySeconds,
    double offDelaySeconds,
    double deadbandKelvin,
    double onceSeconds,
    int priority,
    Answer advise,
    String why,
    String text) {
  static final String CHANNEL_PLACE = "{channel}";

  Rule {
    watch = List.copyOf(watch);
  }

  String idFor(Optional<Channel> channel) {
    return channel.map(each -> id.replace(CHANNEL_PLACE, ThermalNature.word(each))).orElse(id);
  }

  /** The ids under which events tell it, one for each channel that is watched. */
  List<String> idsTold() {
    return watch.isEmpty()
        ? List.of(id)
        : watch.stream().map(each -> idFor(Optional.of(each))).toList();
  }

  /**
   * What the rule has in common with others: all easing is about load, all watching of channels is
   * one notice, codes and link stand alone, and the rest goes by what is advised.
   */
  String cause() {
    return switch (advise) {
      case EASE -> "load";
      case WATCH -> watch.isEmpty() ? id : "watch";
      case READ_CODES, CHECK_LINK -> id;
      case CLIMB_AHEAD,
          RECOVER,
          IDLE,
          STOP_AND_LOOK,
          CHECK_FAN,
          CHECK_PUMP,
          CHECK_COOLER,
          CHECK_SENSOR,
          CHECK_CHARGING,
          CONFIRM_LIMIT ->
          advise.word();
    };
  }
}
