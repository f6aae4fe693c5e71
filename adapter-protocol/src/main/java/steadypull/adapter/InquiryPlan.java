package steadypull.adapter;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import steadypull.adapter.diagnostic.CodeStatus;
import steadypull.adapter.diagnostic.TroubleCodeReport.Found;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.Message;
import steadypull.adapter.link.LinkException;

/**
 * What is asked beside the parameters, and when: trouble codes at the start, every minute and at
 * the end, freeze frames of new codes, and once what the control units are called. One question at
 * a time with room for polls between them. Reader thread only.
 */
final class InquiryPlan {
  /** A stored code is known within a minute: limp mode is then told from heat while it matters. */
  private static final Duration BETWEEN_ROUNDS = Duration.ofSeconds(60);

  private static final Duration BETWEEN_QUESTIONS = Duration.ofMillis(250);
  private static final Duration PATIENCE = Duration.ofSeconds(3);

  private final VehiclePort port;
  private final VehicleKnowledge vehicle;
  private final ReaderListener listener;
  private final Set<Found> framed = new HashSet<>();
  private final Deque<Inquiry> inquiries = new ArrayDeque<>();
  private boolean isNewRound = true;
  private long roundNanoTime;
  private long dueNanoTime;

  /** A plan at the start of polling. */
  InquiryPlan(
      VehiclePort port, VehicleKnowledge vehicle, ReaderListener listener, long nowNanoTime) {
    this.port = port;
    this.vehicle = vehicle;
    this.listener = listener;
    this.roundNanoTime = nowNanoTime;
    this.dueNanoTime = nowNanoTime;
    inquiries.add(allCodes());
  }

  /** Also asks once what the control units are called. */
  void introduce() {
    inquiries.add(new IdentityInquiry(vehicle));
  }

  private Inquiry allCodes() {
    return codes(
        vehicle.format().isCan()
            ? List.of(CodeStatus.STORED, CodeStatus.PENDING, CodeStatus.PERMANENT)
            : List.of(CodeStatus.STORED, CodeStatus.PENDING));
  }

  private Inquiry codes(List<CodeStatus> statuses) {
    return new TroubleCodeInquiry(vehicle, statuses, framed);
  }

  /** Whether it is time for a question. */
  boolean isDue(long nowNanoTime) {
    return nowNanoTime - dueNanoTime >= 0;
  }

  /** How long until the next question; zero or less if it is due. */
  long nanosLeft(long nowNanoTime) {
    return dueNanoTime - nowNanoTime;
  }

  /** Asks the next question and gives the reply, to be judged as any other. */
  Reply ask(long nowNanoTime) throws LinkException {
    if (inquiries.isEmpty()) {
      inquiries.add(codes(List.of(CodeStatus.STORED, CodeStatus.PENDING)));
      isNewRound = true;
    }
    if (isNewRound) {
      roundNanoTime = nowNanoTime;
      isNewRound = false;
    }
    Inquiry inquiry = inquiries.element();
    Reply reply = ask(inquiry);
    if (inquiry.request().isEmpty()) {
      inquiries.remove();
      // What a code makes worth asking comes before what can wait.
      inquiry.finish(listener, port.lastTextNanoTime()).ifPresent(inquiries::addFirst);
    }
    dueNanoTime =
        inquiries.isEmpty()
            ? roundNanoTime + BETWEEN_ROUNDS.toNanos()
            : nowNanoTime + BETWEEN_QUESTIONS.toNanos();
    return reply;
  }

  /** Asks for the codes once more at the end, as far as the port still goes on. */
  void askLast() throws LinkException {
    Inquiry last = allCodes();
    while (last.request().isPresent()) {
      if (ask(last) instanceof Reply.Silence) {
        return;
      }
    }
    last.finish(listener, port.lastTextNanoTime());
  }

  private Reply ask(Inquiry inquiry) throws LinkException {
    String request = inquiry.request().orElseThrow();
    Reply reply = port.ask(VehicleRequest.toEverybody(request), PATIENCE);
    List<Message> messages = reply instanceof Reply.Data ? port.messages().messages() : List.of();
    inquiry.take(messages);
    return reply;
  }
}
