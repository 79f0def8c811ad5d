namespace LubeController.Emulator.Platform;

/// <summary>
/// The board's own watchdog, with an oscillator of its own, which keeps true time: not kicked within its time, it resets
/// the board.
/// </summary>
/// <param name="timeUs">Its time, us.</param>
internal sealed class Watchdog(long timeUs)
{
    private long _kickedUs;

    /// <summary>Arms it, as the board's start does.</summary>
    public void Arm(long nowUs) => _kickedUs = nowUs;

    /// <summary>A scan was completed.</summary>
    public void Kick(long nowUs) => _kickedUs = nowUs;

    /// <summary>When it bites if it is kicked no more, us.</summary>
    /// <param name="skippedUs">The last scan that was skipped because nothing would have changed, us, which would have kicked; below zero for none.</param>
    public long BitesUs(long skippedUs) => (skippedUs > _kickedUs ? skippedUs : _kickedUs) + timeUs;
}
