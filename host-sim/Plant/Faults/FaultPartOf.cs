namespace LubeController.Plant.Faults;

/// <summary>A kind of part, and what stands for one of them in a run.</summary>
/// <typeparam name="TPart">What stands for it.</typeparam>
/// <param name="words">What a fault's part name must name; empty where there is nothing to choose.</param>
public class FaultPart<TPart>(string words = "") : FaultPart(words);
