/**
 * Motion with limited jerk (S-curve). SI throughout: m, m/s, m/s², m/s³, s. Derived; the trip times in the form
 * published by R. D. Peters, "Ideal lift kinematics" (from memory), checked here by numerical integration.
 */
export interface StopRequest {
  /** Speed before, m/s, > 0. */
  readonly speed: number;
  /** Retardation allowed, m/s², > 0. */
  readonly retardation: number;
  /** Jerk while the retardation builds up, m/s³, > 0. */
  readonly jerkStart: number;
  /** Jerk while it goes back to nothing, m/s³, > 0. */
  readonly jerkEnd: number;
}

export interface Stop {
  readonly time: number;
  readonly distance: number;
  /** Largest retardation reached: less than allowed where the speed is low. */
  readonly peak: number;
  /** Whether the allowed retardation is reached. */
  readonly reached: boolean;
}

/** t = v/a + a/(2 j1) + a/(2 j2); s = v²/(2a) + v a/(2 j1) - a³/(24 j1²) + a³/(24 j2²), a at most sqrt(2 v j1 j2/(j1 + j2)). */
export function stopFrom({ speed, retardation, jerkStart, jerkEnd }: StopRequest): Stop {
  const most = Math.sqrt((2 * speed) / (1 / jerkStart + 1 / jerkEnd));
  const a = Math.min(retardation, most);
  return {
    time: speed / a + a / (2 * jerkStart) + a / (2 * jerkEnd),
    distance:
      speed ** 2 / (2 * a) +
      (speed * a) / (2 * jerkStart) -
      a ** 3 / (24 * jerkStart ** 2) +
      a ** 3 / (24 * jerkEnd ** 2),
    peak: a,
    reached: retardation <= most,
  };
}

export interface Motion {
  readonly speed: number;
  readonly travelled: number;
}

/** Speed and distance a time after the retardation began; after the stop the car stands. */
export function motionDuring(request: StopRequest, time: number): Motion {
  const { speed, jerkStart, jerkEnd } = request;
  const stop = stopFrom(request);
  if (time >= stop.time) return { speed: 0, travelled: stop.distance };
  const a = stop.peak;
  const buildUp = a / jerkStart;
  const easeOff = a / jerkEnd;
  if (time <= buildUp) {
    return {
      speed: speed - (jerkStart * time ** 2) / 2,
      travelled: speed * time - (jerkStart * time ** 3) / 6,
    };
  }
  const left = stop.time - time;
  if (left <= easeOff) {
    return { speed: (jerkEnd * left ** 2) / 2, travelled: stop.distance - (jerkEnd * left ** 3) / 6 };
  }
  const after = time - buildUp;
  const speedThen = speed - (jerkStart * buildUp ** 2) / 2;
  const travelledThen = speed * buildUp - (jerkStart * buildUp ** 3) / 6;
  return {
    speed: speedThen - a * after,
    travelled: travelledThen + speedThen * after - (a * after ** 2) / 2,
  };
}

export interface Trip {
  readonly time: number;
  readonly peakSpeed: number;
}

/** Time of a trip of a distance with equal acceleration and retardation a and one jerk j. */
export function tripOver(distance: number, rated: number, a: number, j: number): Trip {
  // At low rated speed the acceleration is cut off at sqrt(v j) before it reaches a.
  const reachable = Math.min(a, Math.sqrt(rated * j));
  if (distance >= rated ** 2 / reachable + (rated * reachable) / j) {
    return { time: distance / rated + rated / reachable + reachable / j, peakSpeed: rated };
  }
  if (distance >= (2 * a ** 3) / j ** 2) {
    const time = a / j + Math.sqrt((4 * distance) / a + (a / j) ** 2);
    return { time, peakSpeed: (a * (time - (2 * a) / j)) / 2 };
  }
  return { time: Math.cbrt((32 * distance) / j), peakSpeed: Math.cbrt((distance ** 2 * j) / 4) };
}
