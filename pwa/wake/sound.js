// The sound of the watch: a square wave of 520 Hz, which woke more sleepers than a high tone did (Bruck and Thomas on signals of
// smoke alarms). A phone is quieter than what they tried, so nothing is promised. It needs a tap first, or the browser keeps silent.
const hertz = 520, onFor = 0.5, offFor = 0.5;

export const sound = () => {
  let context, wave;
  const stop = () => { wave?.stop(); wave = undefined; };
  return {
    // Called within a tap: only then may a page make a sound later.
    async ready() {
      context ??= new AudioContext();
      await context.resume();
    },
    // On and off by the clock of the sound itself: a page that is slow keeps the beat.
    start(seconds) {
      if (wave) return;
      wave = new OscillatorNode(context, { type: 'square', frequency: hertz });
      const gate = new GainNode(context, { gain: 0 });
      for (let at = 0; at < seconds; at += onFor + offFor) {
        gate.gain.setValueAtTime(1, context.currentTime + at);
        gate.gain.setValueAtTime(0, context.currentTime + at + onFor);
      }
      wave.connect(gate).connect(context.destination);
      wave.onended = () => { wave = undefined; };
      wave.start();
      wave.stop(context.currentTime + seconds);
    },
    stop,
    sounding: () => Boolean(wave),
    end() { stop(); context?.close(); context = undefined; },
  };
};
