/** Tells a share only when it has grown by a hundredth: a decoder goes through thousands of blocks a second. */
export function createTeller(tell: (share: number) => void): (share: number) => void {
  let told = 0;
  return (share) => {
    if (share < told + 0.01 && share < 1) return;
    told = share;
    tell(share);
  };
}
