using System.Collections.Generic;

namespace LubeController.Plant.Wiring;

/// <summary>The outputs whose contacts a wiring may use.</summary>
public static class WiringOutputs
{
    /// <summary>The healthy relay: energised in health.</summary>
    public const string HealthyRelay = "healthy-relay";

    /// <summary>The warning output.</summary>
    public const string Warning = "warning";

    /// <summary>The lamp output.</summary>
    public const string Lamp = "lamp";

    /// <summary>A contact beside the controller that goes to and fro while its main loop completes scans, driven by what feeds the watchdog.</summary>
    public const string Heartbeat = "heartbeat";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [HealthyRelay, Warning, Lamp, Heartbeat];
}
