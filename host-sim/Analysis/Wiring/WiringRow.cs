namespace LubeController.Analysis.Wiring;

/// <summary>One alarm under one single fault.</summary>
/// <param name="Condition">The alarm.</param>
/// <param name="Fault">The fault; null for sound wiring.</param>
/// <param name="InHealth">What the supervisor sees in health.</param>
/// <param name="InAlarm">What the supervisor sees while the alarm stands.</param>
/// <param name="Outcome">What that means.</param>
/// <param name="MadeVisibleBy">For a fault that nobody can detect: what would show it in health, each measure tried on the circuit by itself.</param>
public sealed record WiringRow(
    WiringCondition Condition,
    WiringFaultCase? Fault,
    WiringPicture InHealth,
    WiringPicture InAlarm,
    WiringOutcome Outcome,
    WiringMeasures MadeVisibleBy);
