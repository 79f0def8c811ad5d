using LubeController.Core;

namespace LubeController.Analysis.Exploration;

/// <summary>What the core reports of its last scan.</summary>
internal static class CoreEvents
{
    /// <summary>Whether a press was obeyed.</summary>
    public static bool Obeyed(this Controller core, Button button)
    {
        ScanEvents events = core.Events;
        for (int index = 0; index < events.Count; index++)
        {
            if (events.Kind(index) == ScanEvent.PressObeyed && events.Subject(index) == (int)button)
                return true;
        }

        return false;
    }

    /// <summary>Whether a dose was completed.</summary>
    public static bool CompletedDose(this Controller core)
    {
        ScanEvents events = core.Events;
        for (int index = 0; index < events.Count; index++)
        {
            if (events.Kind(index) == ScanEvent.DoseCompleted)
                return true;
        }

        return false;
    }

    /// <summary>Whether a cycle switch gave a pulse that was accepted.</summary>
    public static bool AcceptedPulse(this Controller core, int cycleSwitch)
    {
        ScanEvents events = core.Events;
        for (int index = 0; index < events.Count; index++)
        {
            bool edge = events.Kind(index) is ScanEvent.PulseCounted or ScanEvent.PulseOpened or ScanEvent.PulseCredited or ScanEvent.PulseSeen;
            if (edge && events.Subject(index) == cycleSwitch)
                return true;
        }

        return false;
    }
}
