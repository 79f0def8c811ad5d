using LubeController.Core;

namespace LubeController.RuleTemplate;

/// <summary>
/// A worked example to copy: the rest is shorter while the lubricant is warm. Warm lubricant leaves the bearings sooner,
/// so each millisecond above the set temperature counts as more than one millisecond of rest.
/// </summary>
/// <remarks>
/// Copy this folder, rename the class, keep the shape: settings with units and ranges, <see cref="Begin"/>,
/// <see cref="Advance"/> linear in time, <see cref="RemainingMs"/> that says when to ask again. Integers only, nothing
/// allocated, no division by what can be zero. Progress is kept in hundredths of a millisecond because a percentage of
/// a millisecond would be rounded away, and two short steps must come to the same as one long one.
/// </remarks>
public sealed class WarmRestRule : IRestRule
{
    private const int WarmAboveField = 0;
    private const int ColdRestField = 1;
    private const int WarmPaceField = 2;
    private const int FieldCount = 3;

    private readonly SettingSpec[] _specs =
    {
        new SettingSpec("warm-above", SettingUnit.DeciCelsius, -400, 2000, 450, "Lubricant temperature above which the rest is shorter."),
        new SettingSpec("cold-rest", SettingUnit.Milliseconds, 10000, 20000000, 1800000, "Rest while the lubricant is not warm."),
        new SettingSpec("warm-pace", SettingUnit.Percent, 100, 1000, 200, "How fast rest passes while warm: 200 % halves it."),
    };

    private readonly int[] _values = new int[FieldCount];
    private long _progress;

    /// <summary>Makes the rule with its presets.</summary>
    public WarmRestRule()
    {
        for (int index = 0; index < FieldCount; index++)
            _values[index] = _specs[index].Preset;
    }

    /// <inheritdoc/>
    public int SettingCount => FieldCount;

    private long Needed => (long)_values[ColdRestField] * 100;

    /// <inheritdoc/>
    public SettingSpec Setting(int index) => _specs[index];

    /// <inheritdoc/>
    public void Set(int index, int value) => _values[index] = value;

    /// <inheritdoc/>
    public void Begin() => _progress = 0;

    /// <inheritdoc/>
    public void Advance(int elapsedMs, int shaftPulses, Inputs held) => _progress += (long)elapsedMs * Pace(held);

    /// <inheritdoc/>
    public int RemainingMs(Inputs inputs)
    {
        long missing = Needed - _progress;
        if (missing <= 0)
            return 0;

        // Rounded up: asked a millisecond early, the rest would not be over. The pace is never below 100.
        int pace = Pace(inputs);
        return SafeDivide.QuotientUp(missing, pace);
    }

    /// <inheritdoc/>
    public int RemainingShaftPulses(Inputs inputs) => Saturating.Never;

    /// <inheritdoc/>
    public void Transfer(StateStream stream)
    {
        int low = stream.Number((int)_progress);
        int high = stream.Number((int)(_progress >> 32));
        _progress = ((long)high << 32) | (uint)low;
    }

    private int Pace(Inputs inputs) =>
        inputs.TemperatureDeciC > _values[WarmAboveField] ? _values[WarmPaceField] : 100;
}
