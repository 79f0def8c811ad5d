namespace LubeController.Emulator;

/// <summary>
/// Whoever turns the knobs during a run: a bench script, or a test. It exists so that the emulator knows nothing of
/// scripts. Actions due at one instant happen before the scan of that instant.
/// </summary>
public interface IBenchDriver
{
    /// <summary>Virtual time of the next action, microseconds; <see cref="long.MaxValue"/> if none is due.</summary>
    long NextActionUs { get; }

    /// <summary>Carries out every action due at or before the present time, so that <see cref="NextActionUs"/> moves on.</summary>
    void Act(Bench bench);

    /// <summary>A scan was executed and recorded: actions that wait for an event may now become due, at this time or later.</summary>
    void AfterScan(Bench bench);
}
