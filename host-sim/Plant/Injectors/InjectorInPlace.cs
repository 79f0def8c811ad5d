using LubeController.Plant.Hydraulics;

namespace LubeController.Plant.Injectors;

/// <summary>An injector in the network.</summary>
/// <param name="Injector">The injector.</param>
/// <param name="Network">The network.</param>
internal sealed record InjectorInPlace(Injector Injector, Network Network);
