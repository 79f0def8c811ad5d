using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace LubeController.Analysis.Lockstep;

/// <summary>What is done before a step's first scan.</summary>
public enum LockstepDeed
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The power is cut and comes back, the state of the last scan saved.</summary>
    PowerCut,

    /// <summary>The same, and at power-up a logic fault is told.</summary>
    CutByLogicFault,

    /// <summary>The same, and at power-up a corrupt memory is told.</summary>
    CutWithCorruptStorage,

    /// <summary>An alarm is shelved.</summary>
    Shelve,

    /// <summary>Shelving of an alarm is ended.</summary>
    Unshelve,

    /// <summary>An alarm is taken out of service.</summary>
    TakeOutOfService,

    /// <summary>An alarm is put into service again.</summary>
    PutIntoService,
}

/// <summary>Some scans under the same inputs.</summary>
/// <param name="Inputs">What they see; shaft pulses and revolutions come anew in each.</param>
/// <param name="ElapsedMs">Time from scan to scan, ms, 0 upward; none passes before the first scan after a power-up.</param>
/// <param name="Scans">How many, 1 upward.</param>
/// <param name="Deed">What is done first.</param>
/// <param name="Alarm">The core's number of the alarm that it is done to.</param>
/// <param name="ForMs">How long an alarm is shelved, ms, 1 upward.</param>
public sealed record LockstepStep(
    LockstepInputs Inputs, int ElapsedMs = 10, int Scans = 1, LockstepDeed Deed = LockstepDeed.None, int Alarm = 0, int ForMs = 1)
{
    private static readonly LockstepInputs Quiet = new();

    /// <summary>The step in words: only what differs from a machine at work with nothing wrong.</summary>
    public override string ToString()
    {
        string deed = Deed switch
        {
            LockstepDeed.None => "",
            LockstepDeed.PowerCut or LockstepDeed.CutByLogicFault or LockstepDeed.CutWithCorruptStorage => $"{Deed}, then ",
            LockstepDeed.Shelve => string.Create(CultureInfo.InvariantCulture, $"Shelve alarm {Alarm} for {ForMs} ms, then "),
            _ => string.Create(CultureInfo.InvariantCulture, $"{Deed} alarm {Alarm}, then "),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{deed}{Scans} x {ElapsedMs} ms{string.Concat(Words().Select(word => ", " + word))}");
    }

    private IEnumerable<string> Words()
    {
        LockstepInputs seen = Inputs;
        if (seen.CycleSwitches != 0)
            yield return $"cycle switches {string.Join(" and ", Enumerable.Range(0, 4).Where(index => ((seen.CycleSwitches >> index) & 1) != 0).Select(index => index + 1))} on";
        if (seen.ShaftPulses != 0)
            yield return $"{seen.ShaftPulses} shaft pulses";
        if (seen.PumpRevolutions != 0)
            yield return $"{seen.PumpRevolutions} pump revolutions";
        if (!seen.MachineRunning)
            yield return "machine standing";
        if (seen.LevelLow)
            yield return "low switch on";
        if (seen.LevelEmpty)
            yield return "empty switch on";
        if (seen.PressureSwitch)
            yield return "pressure switch on";
        if (seen.PumpOverload)
            yield return "overload contact on";
        if (seen.Stop)
            yield return "stop";
        if (seen.Pressed != 0)
            yield return $"{seen.Pressed} down";
        if (seen.ScanLate)
            yield return "scan late";
        if (seen.SupplyMv != Quiet.SupplyMv)
            yield return $"supply {seen.SupplyMv} mV";
        if (seen.PressureMbar != 0)
            yield return $"pressure {seen.PressureMbar} mbar";
        if (seen.TemperatureDeciC != Quiet.TemperatureDeciC)
            yield return $"{seen.TemperatureDeciC / 10.0} °C";
    }
}
