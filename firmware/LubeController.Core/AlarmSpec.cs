namespace LubeController.Core;

/// <summary>The fixed facts of one alarm: a row of <see cref="AlarmTable"/>. Immutable.</summary>
public sealed class AlarmSpec
{
    private const int ActionShift = 8;
    private const int CategoryShift = 12;
    private const int CodeMask = 15;

    private readonly string _name;
    private readonly int _causes;

    // Action, category and traits share one word: on the microcontroller each field of an object costs twelve bytes.
    private readonly int _facts;

    internal AlarmSpec(string name, AlarmAction action, AlarmCategory category, AlarmTraits traits, int causes)
    {
        _name = name;
        _causes = causes;
        _facts = (int)traits | ((int)action << ActionShift) | ((int)category << CategoryShift);
    }

    /// <summary>The name users see, lower case with hyphens; never null.</summary>
    public string Name => _name;

    /// <summary>How the alarm acts on the pump unless it has escalated.</summary>
    public AlarmAction Action => (AlarmAction)((_facts >> ActionShift) & CodeMask);

    /// <summary>The category unless the alarm has escalated.</summary>
    public AlarmCategory Category => (AlarmCategory)((_facts >> CategoryShift) & CodeMask);

    /// <summary>
    /// The alarms from which this one follows, one bit each: raised while one of them is active and shown, this one is suppressed
    /// by design until none of them stands.
    /// </summary>
    public int Causes => _causes;

    /// <summary>Whether the alarm stands until reset after its condition has ended.</summary>
    public bool Latches => Has(AlarmTraits.Latches);

    /// <summary>
    /// Whether a delay before raising may be set. The other alarms already stand for something that has happened, often
    /// at the end of a time of their own, and are raised at once.
    /// </summary>
    public bool TakesDelayOn => Has(AlarmTraits.TakesDelayOn);

    /// <summary>Whether the condition ends as soon as it has come, so that the delay off is how long the alarm is active.</summary>
    public bool IsMomentary => Has(AlarmTraits.Momentary);

    /// <summary>Whether the alarm escalates to category failure in some situations; <see cref="AlarmList"/> knows when.</summary>
    public bool BecomesFailure => Has(AlarmTraits.BecomesFailure);

    /// <summary>How the alarm acts on the pump once it has escalated.</summary>
    public AlarmAction EscalatedAction => Has(AlarmTraits.BecomesDoseEnding) ? AlarmAction.DoseEnding : Action;

    private bool Has(AlarmTraits trait) => (_facts & (int)trait) != 0;
}
