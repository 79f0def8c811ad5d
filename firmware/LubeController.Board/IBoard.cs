using LubeController.Core;

namespace LubeController.Board;

/// <summary>
/// What the main loop needs of a microcontroller: pins, clock and its own watchdog. It exists so that the very loop that
/// is deployed runs on the bench: the emulator implements it beside every real board.
/// </summary>
public interface IBoard
{
    /// <summary>Millisecond clock, free running; it may wrap.</summary>
    uint NowMs { get; }

    /// <summary>Why the board started last.</summary>
    ResetCause ResetCause { get; }

    /// <summary>Milliseconds by which the present scan came later than the board had planned it; 0 on time.</summary>
    int LateMs { get; }

    /// <summary>Whether the board has a clock that knows the time of day.</summary>
    bool HasWallTime { get; }

    /// <summary>Seconds since 1970-01-01 00:00 UTC by that clock; means nothing without one.</summary>
    uint WallTimeS { get; }

    /// <summary>Copies the pins to the input image, shaft pulses since the last call among them.</summary>
    void ReadInputs(Inputs inputs);

    /// <summary>Copies the output image to the pins.</summary>
    void WriteOutputs(Outputs outputs);

    /// <summary>Kicks the board's own watchdog; called only after a completed scan.</summary>
    void KickWatchdog();

    /// <summary>
    /// Waits for the next scan. Quiet time may be skipped as far as the core allows; a real board need not look.
    /// </summary>
    /// <param name="core">Knows how long nothing changes if the inputs do not.</param>
    /// <param name="mostMs">Longest wait the loop itself allows, milliseconds, 1 or more.</param>
    /// <returns>False to leave the loop: power is going, or the run is over.</returns>
    bool WaitForNextScan(Controller core, int mostMs);

    /// <summary>Restarts the board after the loop caught an exception; outputs are safe already.</summary>
    void Restart();
}
