package org.climbwatch.watch;

import org.climbwatch.firing.Course;
import org.climbwatch.reading.Moment;

/** How a step of the firing's course is told. */
final class StepEvents {
  private StepEvents() {}

  /**
   * @param followed the name of the probe that the firing goes by
   */
  static Event of(Moment at, Course.Step step, String followed) {
    if (step instanceof Course.Step.Begins begins) {
      Course.Begun begun = begins.begun();
      String how = begun.byItself() ? "The kiln warms: a firing has begun." : "Firing begun.";
      return new Event.FiringBegan(
          at, begun.since(), begun.name(), followed, begun.byItself(), how);
    } else if (step instanceof Course.Step.Enters enters) {
      return new Event.PhaseChanged(
          at, enters.phase(), enters.phase().title() + ". " + enters.why());
    }
    Course.Step.Ends ends = (Course.Step.Ends) step;
    return new Event.FiringEnded(
        at, ends.begun().name(), ends.byItself(), "Firing over. " + ends.why());
  }
}
