namespace LubeController.Analysis.Wiring;

/// <summary>What becomes of an alarm under a single fault. The order is that of listing: what nobody can detect comes first.</summary>
public enum WiringOutcome
{
    /// <summary>Even sound wiring does not tell: the alarm reaches no input.</summary>
    NeverTold,

    /// <summary>In health nothing shows, and the alarm does not show either.</summary>
    LostUnseen,

    /// <summary>An input stands where its standard leaves undefined what it reads: whether fault and alarm show depends on the input.</summary>
    MayBeLost,

    /// <summary>In health nothing shows; the alarm still comes. A second fault may then hide it.</summary>
    ToldFaultUnseen,

    /// <summary>In health nothing shows; the alarm comes, but not as it should.</summary>
    ToldOtherwise,

    /// <summary>The fault shows in health; the alarm then shows no more.</summary>
    FaultSeenAlarmHidden,

    /// <summary>The fault shows in health, and the alarm can still be told from it.</summary>
    FaultSeenAlarmTold,

    /// <summary>The wiring is sound, and the alarm shows.</summary>
    Told,
}
