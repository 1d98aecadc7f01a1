// Preloaded into what the launcher starts: when the launcher is gone, however it went, this goes
// too. Without it a killed launcher would leave its pages being served. Processes further down
// have channels of their own and are left alone.
if (process.channel && String(process.ppid) === process.env.KILN_LAUNCHER) {
  process.once('disconnect', () => process.exit(1));
  process.channel.unref();
}
