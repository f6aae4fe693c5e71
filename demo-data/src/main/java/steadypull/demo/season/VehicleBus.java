package steadypull.demo.season;

import java.util.List;
import java.util.stream.Stream;
import steadypull.demo.plant.Rig;

/** What a vehicle's diagnostic port speaks, and what it tells. */
enum VehicleBus {
  /** Many parameters, up to six in one request. */
  CAN("ISO 15765-4, 11 bit, 500 kbit/s", 8_000, 1_500),
  /** Few parameters, one in a request. */
  K_LINE("ISO 9141-2", 78_000, 5_000);

  private final String protocol;
  private final long answerMicros;
  private final long jitterMicros;

  VehicleBus(String protocol, long answerMicros, long jitterMicros) {
    this.protocol = protocol;
    this.answerMicros = answerMicros;
    this.jitterMicros = jitterMicros;
  }

  String protocol() {
    return protocol;
  }

  /** From a request to its answer, us (common practice, no source). */
  long answerMicros() {
    return answerMicros;
  }

  /** Standard deviation of what an answer takes longer, us (estimated). */
  long jitterMicros() {
    return jitterMicros;
  }

  /** The answers that the port gives, in the order in which they are first asked for. */
  List<PolledAnswer> answers(Rig.Cooling cooling) {
    return switch (this) {
      case CAN -> PolledAnswer.ofCan(cooling);
      case K_LINE -> PolledAnswer.ofKeyLine();
    };
  }

  /** Headers of the channels that the port tells. */
  Stream<String> channelHeaders(Rig.Cooling cooling) {
    return answers(cooling).stream()
        .flatMap(answer -> answer.values().stream())
        .map(BusValue::channelHeader);
  }
}
