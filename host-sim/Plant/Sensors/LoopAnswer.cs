namespace LubeController.Plant.Sensors;

/// <summary>What a sensor loop's circuit says.</summary>
/// <param name="InputV">Voltage at the input, or at the amplifier, V.</param>
/// <param name="InputA">Current into the input, or out of the amplifier, A.</param>
/// <param name="SuppliedV">Voltage between the switch's supply terminals, V; 0 where they hang in the air.</param>
/// <param name="OutputA">Current through the switch's output, A.</param>
internal readonly record struct LoopAnswer(double InputV, double InputA, double SuppliedV, double OutputA);
