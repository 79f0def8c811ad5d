using System;

namespace LubeController.Core.Tests;

/// <summary>One line for each event of a scan.</summary>
internal static class EventText
{
    public static string Of(ScanEvents events, int index)
    {
        int subject = events.Subject(index);
        int detail = events.Detail(index);
        return events.Kind(index) switch
        {
            ScanEvent.PhaseChanged => $"{PhaseName((Phase)subject)} > {PhaseName((Phase)detail)}",
            ScanEvent.AlarmRaised => "+" + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.AlarmEnded => "-" + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.LatchCleared => "~" + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.PulseCounted => $"pulse {subject + 1} counted {detail}",
            ScanEvent.PulseSeen => $"pulse {subject + 1} seen",
            ScanEvent.PulseOpened => $"pulse {subject + 1} opened",
            ScanEvent.PulseCredited => $"pulse {subject + 1} credited {detail}",
            ScanEvent.PulseTooFast => $"pulse {subject + 1} too fast",
            ScanEvent.PulseDistrusted => $"pulse {subject + 1} distrusted",
            ScanEvent.SwitchFound => $"switch {subject + 1} found wrong by {(detail == 1 ? "chatter" : "witness")}",
            ScanEvent.PressObeyed => $"{(Button)subject} obeyed",
            ScanEvent.PressRefused => $"{(Button)subject} refused",
            ScanEvent.DoseCompleted => $"dose completed with {subject}",
            ScanEvent.DoseStepTaken => $"step {((DoseStep)subject).ToString().ToLowerInvariant()} {detail}",
            ScanEvent.AlarmSuppressed => "suppressed " + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.SuppressionEnded => "shown again " + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.AlarmShelved => $"shelved {AlarmTable.NameOf((AlarmId)subject)} {detail}",
            ScanEvent.ShelvingEnded => "unshelved " + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.TakenOutOfService => "out of service " + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.PutIntoService => "in service " + AlarmTable.NameOf((AlarmId)subject),
            ScanEvent.SensorsDisagree => $"sensors disagree by {(subject == 1 ? "volume" : subject == 2 ? "pressure" : "shaft")} {detail}",
            _ => throw new ArgumentOutOfRangeException(nameof(events), events.Kind(index), "unknown event"),
        };
    }

    public static string PhaseName(Phase phase) => phase switch
    {
        Phase.RetryPause => "retry pause",
        Phase.OutputTest => "output test",
        _ => phase.ToString().ToLowerInvariant(),
    };
}
