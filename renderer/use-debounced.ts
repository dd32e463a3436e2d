import { useEffect, useState } from "react";

/** The value as it stood once it rested for so long: what is asked while somebody types. */
export function useDebounced<Value>(value: Value, milliseconds: number): Value {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), milliseconds);
    return () => clearTimeout(timer);
  }, [value, milliseconds]);
  return rested;
}
