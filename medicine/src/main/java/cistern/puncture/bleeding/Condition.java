package cistern.puncture.bleeding;

import cistern.finding.Printed;
import cistern.measurement.Answer;
import java.util.OptionalDouble;

/** What a guideline asks for beside, or instead of, an interval. */
sealed interface Condition {

  /** Whether it is fulfilled. */
  Answer check(Circumstances circumstances);

  /** What is asked for. */
  String toText();

  /** Whether it can stand instead of the interval. */
  boolean isAlternative();

  /**
   * INR not over a limit.
   *
   * @param limit included
   * @param isSameDay whether it must be of the day of the puncture
   */
  record InrUpTo(double limit, boolean isSameDay) implements Condition {
    @Override
    public Answer check(Circumstances c) {
      Answer value = upTo(c.anticoagulation().coagulation().inr(), limit);
      return value.isYes() && isSameDay && !c.isBloodOfTheDay() ? Answer.UNKNOWN : value;
    }

    @Override
    public String toText() {
      return "INR ≤ " + Printed.decimals(limit, 1) + (isSameDay ? " on the same day" : "");
    }

    @Override
    public boolean isAlternative() {
      return false;
    }
  }

  /** INR normal by the laboratory's own range. */
  record InrNormal() implements Condition {
    @Override
    public Answer check(Circumstances c) {
      return c.inrNormal();
    }

    @Override
    public String toText() {
      return "INR normal";
    }

    @Override
    public boolean isAlternative() {
      return false;
    }
  }

  /**
   * aPTT ratio not over a limit.
   *
   * @param limit included
   */
  record ApttRatioUpTo(double limit) implements Condition {
    @Override
    public Answer check(Circumstances c) {
      return upTo(c.anticoagulation().coagulation().apttRatio(), limit);
    }

    @Override
    public String toText() {
      return "aPTT ratio ≤ " + Printed.decimals(limit, 1);
    }

    @Override
    public boolean isAlternative() {
      return false;
    }
  }

  /**
   * aPTT normal by the laboratory's own range.
   *
   * @param isAlternative whether it can stand instead of the interval
   */
  record ApttNormal(boolean isAlternative) implements Condition {
    @Override
    public Answer check(Circumstances c) {
      return c.apttNormal();
    }

    @Override
    public String toText() {
      return "aPTT normal";
    }
  }

  /**
   * Anti-factor-Xa activity not over a limit.
   *
   * @param limit [IU]/mL, included
   */
  record AntiXaUpTo(double limit) implements Condition {
    @Override
    public Answer check(Circumstances c) {
      return upTo(c.level().antiXa(), limit);
    }

    @Override
    public String toText() {
      return "anti-Xa ≤ " + Printed.decimals(limit, 1) + " IU/mL";
    }

    @Override
    public boolean isAlternative() {
      return true;
    }
  }

  /**
   * Drug level under a limit.
   *
   * @param limit ng/mL, left out
   */
  record LevelBelow(double limit) implements Condition {
    @Override
    public Answer check(Circumstances c) {
      OptionalDouble level = c.level().nanogramsPerMl();
      if (level.isEmpty()) {
        return Answer.UNKNOWN;
      }
      return level.getAsDouble() < limit ? Answer.YES : Answer.NO;
    }

    @Override
    public String toText() {
      return "drug level < " + Printed.decimals(limit, 0) + " ng/mL";
    }

    @Override
    public boolean isAlternative() {
      return true;
    }
  }

  /** Thrombin time normal. */
  record ThrombinTimeNormal() implements Condition {
    @Override
    public Answer check(Circumstances c) {
      return c.level().thrombinTimeNormal();
    }

    @Override
    public String toText() {
      return "thrombin time normal";
    }

    @Override
    public boolean isAlternative() {
      return true;
    }
  }

  private static Answer upTo(OptionalDouble value, double limit) {
    if (value.isEmpty()) {
      return Answer.UNKNOWN;
    }
    return value.getAsDouble() <= limit ? Answer.YES : Answer.NO;
  }
}
