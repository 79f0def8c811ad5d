using LubeController.Core;
using LubeController.Plant.Wiring;

namespace LubeController.Analysis.Wiring;

/// <summary>What all outputs that a wiring may use do at once.</summary>
/// <param name="HealthyRelay">The healthy relay.</param>
/// <param name="Warning">The warning output.</param>
/// <param name="Lamp">The lamp output.</param>
/// <param name="Heartbeat">The heartbeat contact.</param>
public sealed record OutputPattern(OutputState HealthyRelay, OutputState Warning, OutputState Lamp, OutputState Heartbeat)
{
    /// <summary>No alarm stands.</summary>
    public static OutputPattern Health { get; } = new(OutputState.On, OutputState.Off, OutputState.Off, OutputState.Beating);

    /// <summary>No power, or a board that does not run: everything de-energised.</summary>
    public static OutputPattern Dead { get; } = new(OutputState.Off, OutputState.Off, OutputState.Off, OutputState.Off);

    /// <summary>An alarm of a category stands, not yet acknowledged.</summary>
    public static OutputPattern Of(AlarmCategory category) => category == AlarmCategory.Failure
        ? Health with { HealthyRelay = OutputState.Off, Lamp = OutputState.Beating }
        : Health with { Warning = OutputState.On, Lamp = OutputState.Beating };

    /// <summary>What one output does.</summary>
    /// <param name="output">Its name, one of <see cref="WiringOutputs.All"/>.</param>
    public OutputState this[string output] => output switch
    {
        WiringOutputs.HealthyRelay => HealthyRelay,
        WiringOutputs.Warning => Warning,
        WiringOutputs.Lamp => Lamp,
        _ => Heartbeat,
    };

    /// <summary>The same with one output in another state.</summary>
    public OutputPattern With(string output, OutputState state) => output switch
    {
        WiringOutputs.HealthyRelay => this with { HealthyRelay = state },
        WiringOutputs.Warning => this with { Warning = state },
        WiringOutputs.Lamp => this with { Lamp = state },
        _ => this with { Heartbeat = state },
    };
}
