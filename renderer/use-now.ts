import { useEffect, useState } from "react";

/** The time of the machine, again and again: for waiting times that run. */
export function useNow(everyMilliseconds = 10_000): Date {
  const [now, setNow] = useState(() => new Date());
  useEffect(() => {
    const timer = setInterval(() => setNow(new Date()), everyMilliseconds);
    return () => clearInterval(timer);
  }, [everyMilliseconds]);
  return now;
}
