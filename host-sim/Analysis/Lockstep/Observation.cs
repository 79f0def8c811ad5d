using System.Collections.Generic;

namespace LubeController.Analysis.Lockstep;

/// <summary>One alarm as it stands after a scan. Numbers are those of the core's enumerations, which a test holds to their names.</summary>
/// <param name="State">State of its lifecycle: 0 normal, 1 unacknowledged, 2 acknowledged, 3 returned unacknowledged, 4 latched unacknowledged, 5 latched acknowledged, 6 shelved, 7 suppressed by design, 8 out of service.</param>
/// <param name="Action">0 none, 1 dose-ending, 2 interlock, 3 holding; 0 also while it does not stand.</param>
/// <param name="Category">0 failure, 1 out of specification, 2 maintenance required; 0 also while it does not stand.</param>
/// <param name="Active">Its condition is present, delays included.</param>
/// <param name="Latched">Its latch is set.</param>
public readonly record struct AlarmObservation(byte State, byte Action, byte Category, bool Active, bool Latched);

/// <summary>What can be seen of a core after a scan.</summary>
/// <param name="Phase">0 rest, 1 dose, 2 retry pause, 3 prime, 4 stopped, 5 failed, 6 output test.</param>
/// <param name="Pump">The pump is on.</param>
/// <param name="VentValve">The vent valve is energised.</param>
/// <param name="HealthyRelay">The healthy relay is energised.</param>
/// <param name="Warning">The warning output is on.</param>
/// <param name="Lamp">The lamp is on.</param>
/// <param name="DosesCompleted">Doses completed, 0 upward.</param>
/// <param name="PressesRefused">Presses refused, 0 upward.</param>
/// <param name="FirstUp">The alarm that came first, or -1.</param>
/// <param name="Alarms">Every alarm, by its number.</param>
public sealed record Observation(
    int Phase, bool Pump, bool VentValve, bool HealthyRelay, bool Warning, bool Lamp, int DosesCompleted, int PressesRefused, int FirstUp,
    IReadOnlyList<AlarmObservation> Alarms);

/// <summary>A core that is run in lockstep with the specification, whatever build it comes from.</summary>
public interface ILockstepCore
{
    /// <summary>One scan.</summary>
    /// <param name="inputs">What it sees.</param>
    /// <param name="nowMs">The millisecond clock; it may wrap.</param>
    void Scan(LockstepInputs inputs, uint nowMs);

    /// <summary>What can be seen now.</summary>
    Observation Observe();

    /// <summary>The whole state, as saved.</summary>
    byte[] Save();

    /// <summary>Goes on from a saved state. After a power cut, call <see cref="PowerUp"/> next.</summary>
    /// <returns>False, with nothing changed, where it is no state of this core.</returns>
    bool Restore(byte[] saved);

    /// <summary>Power has come back.</summary>
    void PowerUp();

    /// <summary>Told at power-up: the last run ended with an exception.</summary>
    void NoteLogicFault();

    /// <summary>Told at power-up: a block of the memory lost its check value.</summary>
    void NoteStorageCorrupt();

    /// <summary>Hides an alarm, by its number, for a time, ms, 1 upward.</summary>
    void Shelve(int alarm, int forMs);

    /// <summary>Ends shelving of an alarm, by its number.</summary>
    void Unshelve(int alarm);

    /// <summary>Takes an alarm, by its number, out of service, or puts it into service again.</summary>
    void SetOutOfService(int alarm, bool isOut);
}
