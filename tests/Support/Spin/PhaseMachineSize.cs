namespace LubeController.Tests.Support.Spin;

/// <summary>Times of the phase machine in steps, and edges of its dose; each 1 to 250.</summary>
public sealed record PhaseMachineSize(byte Rest, byte Wait, byte Overdue, byte Doses);
