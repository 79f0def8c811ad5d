namespace LubeController.Plant.Wiring;

/// <summary>Where in a wiring a part is.</summary>
/// <param name="Index">Its index among the parts of its kind.</param>
/// <param name="Other">The index of the other of two; of one part the same.</param>
internal readonly record struct WiringPlace(int Index, int Other);
