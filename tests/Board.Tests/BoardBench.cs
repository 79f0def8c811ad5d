using System;
using System.Collections.Generic;
using LubeController.Core;
using NSubstitute;

namespace LubeController.Board.Tests;

/// <summary>Board and storage stood in for by substitutes; storage keeps what was written, and all calls are written down in order.</summary>
internal sealed class BoardBench
{
    public const int BlockLength = MemoryLayout.ShortestBlock;

    public const int FirstState = 6;

    public BoardBench()
    {
        Board = Substitute.For<IBoard>();
        Storage = Substitute.For<IBlockStorage>();
        Board.NowMs.Returns(_ => NowMs);
        Board.When(board => board.ReadInputs(Arg.Any<Inputs>())).Do(call =>
        {
            Calls.Add("read");
            OnRead(call.Arg<Inputs>());
        });
        Board.When(board => board.WriteOutputs(Arg.Any<Outputs>())).Do(call =>
        {
            var outputs = call.Arg<Outputs>();
            Calls.Add(outputs.Pump ? "write pump" : outputs.HealthyRelay ? "write healthy" : "write safe");
            OnWrite();
        });
        Board.When(board => board.KickWatchdog()).Do(_ => Calls.Add("kick"));
        Board.When(board => board.Restart()).Do(_ => Calls.Add("restart"));
        Board.WaitForNextScan(Arg.Any<Controller>(), Arg.Any<int>()).Returns(call =>
        {
            int mostMs = call.Arg<int>();
            Calls.Add("wait");
            Waits.Add(mostMs);
            return OnWait(mostMs);
        });
        Storage.BlockCount.Returns(MemoryLayout.FewestBlocks);
        Storage.BlockLength.Returns(BlockLength);
        Storage.Read(Arg.Any<int>(), Arg.Any<byte[]>()).Returns(call => Read(call.Arg<int>(), call.Arg<byte[]>()));
        Storage.Write(Arg.Any<int>(), Arg.Any<byte[]>(), Arg.Any<int>())
            .Returns(call => Write(call.ArgAt<int>(0), call.Arg<byte[]>(), call.ArgAt<int>(2)));
        Storage.Program(Arg.Any<int>(), Arg.Any<int>(), Arg.Any<byte[]>(), Arg.Any<int>())
            .Returns(call => Program(call.ArgAt<int>(0), call.ArgAt<int>(1), call.Arg<byte[]>(), call.ArgAt<int>(3)));
    }

    public IBoard Board { get; }

    public IBlockStorage Storage { get; }

    public uint NowMs { get; set; } = 1_000;

    public List<string> Calls { get; } = [];

    public List<int> Waits { get; } = [];

    public byte[]?[] Blocks { get; } = new byte[]?[MemoryLayout.FewestBlocks];

    public Settings Settings { get; } = new();

    public Action<Inputs> OnRead { get; set; } = _ => { };

    public Action OnWrite { get; set; } = () => { };

    public Func<int, bool> OnWait { get; set; } = _ => false;

    public Func<bool> StorageWorks { get; set; } = () => true;

    public MainLoop Start(IRestRule? rule = null)
    {
        var loop = new MainLoop(Board, Storage, Settings, rule);
        Calls.Clear();
        return loop;
    }

    private bool Read(int block, byte[] buffer)
    {
        byte[]? kept = Blocks[block];
        if (kept == null)
            Array.Fill(buffer, (byte)0xFF);
        else
            Array.Copy(kept, buffer, Math.Min(kept.Length, buffer.Length));
        return true;
    }

    private bool Write(int block, byte[] buffer, int length)
    {
        Tell(block);
        if (!StorageWorks())
            return false;
        byte[] kept = Blocks[block] ??= new byte[BlockLength];
        Array.Fill(kept, (byte)0xFF);
        Array.Copy(buffer, kept, length);
        return true;
    }

    private bool Program(int block, int at, byte[] buffer, int length)
    {
        Tell(block);
        if (!StorageWorks())
            return false;
        Array.Copy(buffer, 0, Blocks[block]!, at, length);
        return true;
    }

    private void Tell(int block) => Calls.Add(new MemoryLayout(MemoryLayout.FewestBlocks, BlockLength).KindOf(block) switch
    {
        BlockKind.State => "save",
        BlockKind.Boot => "boot",
        BlockKind.Logbook => "log",
        _ => "settings",
    });
}
