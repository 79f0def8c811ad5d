using System.Collections.Generic;
using LubeController.Plant.Description;
using LubeController.Scripts.Reading;

namespace LubeController.Scripts.PlantFiles;

/// <summary>A plant file that was accepted.</summary>
/// <param name="Plant">The plant.</param>
/// <param name="Remarks">What is unusual about it without being wrong.</param>
public sealed record LoadedPlant(PlantDescription Plant, IReadOnlyList<Problem> Remarks);
