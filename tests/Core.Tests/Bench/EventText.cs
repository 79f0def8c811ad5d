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
            ScanEvent.AlarmRaised => "+" + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.AlarmEnded => "-" + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.LatchCleared => "~" + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.PulseCounted => $"pulse {subject + 1} counted {detail}",
            ScanEvent.PulseSeen => $"pulse {subject + 1} seen",
            ScanEvent.PulseOpened => $"pulse {subject + 1} opened",
            ScanEvent.PulseCredited => $"pulse {subject + 1} credited {detail}",
            ScanEvent.PulseTooFast => $"pulse {subject + 1} too fast",
            ScanEvent.PulseDistrusted => $"pulse {subject + 1} distrusted",
            ScanEvent.SwitchFound => $"switch {subject + 1} found wrong by {((SwitchProof)detail == SwitchProof.Chatter ? "chatter" : "witness")}",
            ScanEvent.PressObeyed => $"{(Button)subject} obeyed",
            ScanEvent.PressRefused => $"{(Button)subject} refused",
            ScanEvent.DoseCompleted => $"dose completed with {subject}",
            ScanEvent.DoseStepTaken => $"step {((DoseStep)subject).ToString().ToLowerInvariant()} {detail}",
            ScanEvent.AlarmSuppressed => "suppressed " + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.SuppressionEnded => "shown again " + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.AlarmShelved => $"shelved {AlarmTable.Spec((AlarmId)subject).Name} {detail}",
            ScanEvent.ShelvingEnded => "unshelved " + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.TakenOutOfService => "out of service " + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.PutIntoService => "in service " + AlarmTable.Spec((AlarmId)subject).Name,
            ScanEvent.SensorsDisagree => $"sensors disagree by {((SensorPair)subject switch { SensorPair.VolumeAndPulses => "volume", SensorPair.PressureAndPulses => "pressure", _ => "shaft" })} {detail}",
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
