namespace LubeController.Plant.Circuits;

/// <summary>A point of a current over a voltage.</summary>
/// <param name="VoltageV">V.</param>
/// <param name="CurrentA">A.</param>
public readonly record struct CurvePoint(double VoltageV, double CurrentA);
