namespace LubeController.Core;

/// <summary>
/// The one door for custom logic: a user's own rule for how long the pump rests. It exists so that a rule can be
/// written, proved on the bench and deployed without touching the core; the worked example to copy stands in
/// <c>firmware/LubeController.RuleTemplate</c>. A rule that throws or answers out of range is survived: the alarm
/// rule-fault is raised and the fallback time takes over until a reset.
/// </summary>
/// <remarks>
/// The core calls a rule only when something can have changed, so a rule must be linear in between: many short steps
/// under the same inputs must come to the same as one long step. It must not allocate and may use integers only.
/// </remarks>
public interface IRestRule
{
    /// <summary>Number of settings of its own.</summary>
    int SettingCount { get; }

    /// <summary>Name, unit and range of a setting; the bench reads its settings file by it.</summary>
    SettingSpec Setting(int index);

    /// <summary>Gives a setting its value, within the range it stated.</summary>
    void Set(int index, int value);

    /// <summary>A full rest begins.</summary>
    void Begin();

    /// <summary>Time has passed in a rest.</summary>
    /// <param name="elapsedMs">Milliseconds since the last call, 0 or more.</param>
    /// <param name="shaftPulses">Shaft pulses in that time.</param>
    /// <param name="held">The inputs as they stood through all of that time.</param>
    void Advance(int elapsedMs, int shaftPulses, Inputs held);

    /// <summary>
    /// Milliseconds of rest that remain if the inputs stay as they are; 0 ends the rest. Allowed: 0 up to the setting
    /// <c>rule-longest-rest</c>; a rest of less than one second is out of range.
    /// </summary>
    int RemainingMs(Inputs inputs);

    /// <summary>Shaft pulses that remain if the inputs stay as they are; 0 ends the rest, <see cref="Saturating.Never"/> where shaft pulses do not matter.</summary>
    int RemainingShaftPulses(Inputs inputs);

    /// <summary>Hands its own state through the stream, in either direction.</summary>
    void Transfer(StateStream stream);
}
